package org.restpoint.adapters.sdi12;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.restpoint.adapters.sdi12.Visit.Change;
import org.restpoint.adapters.sdi12.Visit.Found;

/** What a person asks of a bus, over a wire in memory. */
class VisitTest {

  private static final SensorAddress ZERO = new SensorAddress('0');
  private static final SensorAddress FIVE = new SensorAddress('5');

  private final MemoryTurn turn = new MemoryTurn();
  private final Visit visit = new Visit(turn, Duration.ofSeconds(1), 1);

  @Test
  void theOnlySensorTellsItsAddressAndWhatItIs() {
    turn.sensor('5', 1);
    assertThat(visit.onlyAddress()).isEqualTo(new Found.Here<>(FIVE));
    assertThat(visit.identify(FIVE))
        .isEqualTo(new Found.Here<>(new Identification("1.4", "INVENTED", "ION-2", "1.0", "")));
    assertThat(visit.identify(ZERO)).isEqualTo(new Found.Nobody<>());
  }

  @Test
  void nobodyAnswersOnAnEmptyBus() {
    assertThat(visit.onlyAddress()).isEqualTo(new Found.Nobody<>());
  }

  @Test
  void sensorsThatAnswerAtOnceAreUnclear() {
    turn.sensor('0', 1).garbles(text -> "05\r\n");
    assertThat(visit.onlyAddress())
        .isEqualTo(new Found.Unclear<>("\"05\" is more than one address"));
  }

  @Test
  void anAddressIsChangedAndSeenToBe() throws InterruptedException {
    SimulatedSensor sensor = turn.sensor('0', 1);
    assertThat(visit.change(ZERO, FIVE)).isEqualTo(Change.DONE);
    assertThat(sensor.address()).isEqualTo('5');
    assertThat(turn.bus().commands()).containsExactly("0!", "5!", "5!", "0A5!", "5!");
  }

  @Test
  void aChangeWhoseAnswerWasLostIsStillSeen() throws InterruptedException {
    SimulatedSensor sensor = turn.sensor('0', 1);
    int[] answers = {0};
    sensor.garbles(text -> answers[0]++ == 1 ? "" : text);
    assertThat(visit.change(ZERO, FIVE)).isEqualTo(Change.DONE);
  }

  @Test
  void nothingIsChangedWhereNobodyIsOrTheNewAddressIsTaken() throws InterruptedException {
    assertThat(visit.change(ZERO, FIVE)).isEqualTo(Change.NOBODY);
    turn.sensor('0', 1);
    SimulatedSensor five = turn.sensor('5', 2);
    assertThat(visit.change(ZERO, FIVE)).isEqualTo(Change.TAKEN);
    five.garbles(text -> "5?\r\n");
    assertThat(visit.change(ZERO, FIVE)).isEqualTo(Change.UNCLEAR);
    assertThat(turn.bus().commands()).doesNotContain("0A5!");
  }

  @Test
  void aSensorThatKeepsItsAddressIsTold() throws InterruptedException {
    SimulatedSensor sensor = turn.sensor('0', 1);
    sensor.fixed();
    assertThat(visit.change(ZERO, FIVE)).isEqualTo(Change.NOT_CONFIRMED);
    turn.goes();
    assertThat(visit.identify(ZERO)).isEqualTo(new Found.Unclear<>("the converter is gone"));
  }
}
