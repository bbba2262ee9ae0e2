package org.restpoint.adapters.sdi12;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.time.Duration;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.restpoint.adapters.bus.Outcome;
import org.restpoint.adapters.quantity.Meaning;
import org.restpoint.adapters.quantity.Parsed;
import org.restpoint.adapters.quantity.PotentialScale;
import org.restpoint.adapters.sdi12.Measurement.Kind;

/** Sensors asked in every way, over a wire in memory and in time that passes by reading. */
class SensorExchangeTest {

  private static final Duration SECOND = Duration.ofSeconds(1);

  private final MemoryTurn turn = new MemoryTurn();
  private final SimulatedSensor zero = turn.sensor('0', 187.4, 21.5, -12);
  private final Probes probes = new Probes();

  private Outcome asked(String command) {
    return probes.probe('0', command, 1, 2).poll(turn);
  }

  private String rejected(String command) {
    Outcome outcome = asked(command);
    assertThat(outcome).isInstanceOf(Outcome.Rejected.class);
    return ((Outcome.Rejected) outcome).reason();
  }

  @ParameterizedTest
  @CsvSource({
    "M, 0M! 0D0!, 187.4, 21.5",
    "MC, 0MC! 0D0!, 187.4, 21.5",
    "M1, 0M1! 0D0!, -12, 21.5",
    "C, 0C! 0D0!, 187.4, 21.5",
    "CC1, 0CC1! 0D0!, -12, 21.5",
    "R0, 0R0!, 187.4, 21.5",
    "RC1, 0RC1!, -12, 21.5"
  })
  void eachKindOfMeasurementGivesItsValues(
      String command, String sent, double millivolts, double celsius) {
    assertThat(asked(command)).isEqualTo(Probes.read(millivolts, celsius));
    assertThat(turn.bus().commands()).containsExactly(sent.split(" "));
  }

  @Test
  void valuesInSeveralAnswersAreAskedForOneByOne() {
    zero.sendsInPartsOf(1);
    assertThat(asked("MC")).isEqualTo(Probes.read(187.4, 21.5));
    assertThat(turn.bus().commands()).containsExactly("0MC!", "0D0!", "0D1!", "0D2!");
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 64})
  void theEchoOfAConverterIsDroppedWhateverItsPieces(int bytes) {
    turn.bus().echoes(true);
    turn.inPiecesOf(bytes);
    zero.takes(5, Optional.of(SECOND));
    assertThat(asked("M")).isEqualTo(Probes.read(187.4, 21.5));
    assertThat(turn.bus().commands()).containsExactly("0M!", "0D0!");
  }

  @Test
  void breaksThatArriveAsNulDoNoHarm() {
    turn.bus().noise("\0\0");
    assertThat(asked("MC")).isEqualTo(Probes.read(187.4, 21.5));
  }

  @Test
  void aServiceRequestEndsTheWait() {
    zero.takes(60, Optional.of(SECOND));
    long before = turn.nanos();
    assertThat(asked("M")).isEqualTo(Probes.read(187.4, 21.5));
    assertThat(turn.nanos() - before).isLessThan(Duration.ofSeconds(10).toNanos());
  }

  @Test
  void withoutAServiceRequestTheAnnouncedTimeIsWaited() {
    zero.takes(60, Optional.empty());
    long before = turn.nanos();
    assertThat(asked("M")).isEqualTo(Probes.read(187.4, 21.5));
    assertThat(turn.nanos() - before).isGreaterThanOrEqualTo(Duration.ofSeconds(60).toNanos());
  }

  @Test
  void aServiceRequestThatComesTooLateIsNotTakenForTheValues() {
    zero.answersAfter(Duration.ofMillis(200));
    zero.takes(1, Optional.of(Duration.ofMillis(1_300)));
    assertThat(asked("MC")).isEqualTo(Probes.read(187.4, 21.5));
  }

  @Test
  void aSensorThatAnswersTheSecondTimeIsRead() {
    int[] answers = {0};
    zero.garbles(text -> answers[0]++ % 2 == 0 ? "" : text);
    assertThat(asked("M")).isEqualTo(Probes.read(187.4, 21.5));
    assertThat(turn.bus().commands()).containsExactly("0M!", "0M!", "0D0!", "0D0!");
  }

  @Test
  void aGarbledAnswerIsAskedForAgainAndThenToldByName() {
    zero.garbles(text -> text.replace("187", "188"));
    assertThat(rejected("MC"))
        .matches("the check characters of \"0\\+188\\.40\\+21\\.50-12\\.00...\" do not fit");
    assertThat(turn.bus().commands()).containsExactly("0MC!", "0D0!", "0D0!", "0D0!");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "0+187.40 | \"0+187.40\" has no end",
        "§0+1$%¶ | \"\\xA70+1$%\" begins with no sensor's address",
        "000¶ | \"000\" does not announce a measurement: 4 digits follow the address",
        "3+1¶ | sensor 3 answered instead: \"3+1\""
      })
  void whatIsNoAnswerIsToldByName(String instead, String reason) {
    String sent = instead.replace("¶", "\r\n");
    zero.garbles(text -> sent);
    assertThat(rejected("M")).isEqualTo(reason);
  }

  @Test
  void anotherSensorsLateAnswerIsPassedOver() {
    zero.garbles(text -> "1+9.9\r\n" + text);
    assertThat(asked("M")).isEqualTo(Probes.read(187.4, 21.5));
  }

  @Test
  void anAnswerThatComesTooLateIsToldAsNone() {
    zero.answersAfter(Duration.ofSeconds(5));
    assertThat(asked("R0")).isEqualTo(new Outcome.NoAnswer());
  }

  @Test
  void anAbortedMeasurementIsToldByName() {
    zero.aborts(true);
    assertThat(rejected("M")).isEqualTo("the measurement M was aborted, it has no values");
    assertThat(rejected("CC")).isEqualTo("the measurement CC was aborted, it has no values");
  }

  @Test
  void fewerValuesThanAnnouncedAreToldByName() {
    zero.garbles(text -> text.replace("-12.00", ""));
    assertThat(rejected("M")).isEqualTo("the measurement M announced 3 values and gave 2");
    assertThat(turn.bus().commands()).containsExactly("0M!", "0D0!", "0D1!");
  }

  @Test
  void aMeasurementThatTheSensorDoesNotKnowIsToldByName() {
    assertThat(rejected("M2")).isEqualTo("the sensor has no values to measure with M2");
    assertThat(rejected("R5")).isEqualTo("the sensor has no values to measure with R5");
  }

  @Test
  void aValueThatTheSensorDoesNotHaveIsToldByName() {
    assertThat(((Outcome.Rejected) probes.probe('0', "M", 4, 2).poll(turn)).reason())
        .isEqualTo("the measurement M gives 3 values, and millivolts is to be number 4");
    assertThat(((Outcome.Rejected) probes.probe('0', "M", 0, 9).poll(turn)).reason())
        .isEqualTo("the measurement M gives 3 values, and celsius is to be number 9");
    zero.measures(99_999, 20);
    turn.passes(Duration.ofMinutes(1));
    assertThat(rejected("M")).isEqualTo("99999 mV is outside -10000 to 10000 mV");
  }

  @Test
  void aThermometerIsReadWithoutAPotential() {
    assertThat(probes.probe('0', "M", 0, 2).poll(turn))
        .isEqualTo(
            new Outcome.Values(new Parsed.Values(OptionalDouble.empty(), OptionalDouble.of(21.5))));
  }

  @Test
  void nothingIsAskedWhenTheTurnIsOver() {
    turn.ends();
    asked("M");
    assertThat(turn.bus().commands()).isEmpty();
  }

  @Test
  void settingsThatCannotBeAreRefused() {
    Measurement measurement = new Measurement(Kind.ALONE, 0, false);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Probes.settings('0', measurement, 100, 2))
        .withMessage("value 100 is not 1 to 99");
    assertThatIllegalArgumentException()
        .isThrownBy(
            () ->
                new Sdi12Settings(
                    new SensorAddress('0'),
                    measurement,
                    new Meaning(Optional.of(PotentialScale.MILLIVOLTS), Optional.empty()),
                    OptionalInt.of(1),
                    OptionalInt.of(2),
                    SECOND,
                    SECOND,
                    2,
                    SECOND))
        .withMessage("the temperature has a scale and a place, or neither");
  }
}
