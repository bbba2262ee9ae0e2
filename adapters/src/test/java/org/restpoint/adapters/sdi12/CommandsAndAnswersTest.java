package org.restpoint.adapters.sdi12;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.restpoint.adapters.sdi12.Answer.Malformed;
import org.restpoint.adapters.sdi12.Answer.Understood;
import org.restpoint.adapters.sdi12.Measurement.Kind;

class CommandsAndAnswersTest {

  private static final SensorAddress ZERO = new SensorAddress('0');

  @ParameterizedTest
  @CsvSource({
    "ALONE, 0, false, 0M!",
    "ALONE, 9, false, 0M9!",
    "ALONE, 0, true, 0MC!",
    "ALONE, 1, true, 0MC1!",
    "CONCURRENT, 0, false, 0C!",
    "CONCURRENT, 3, false, 0C3!",
    "CONCURRENT, 0, true, 0CC!",
    "CONCURRENT, 9, true, 0CC9!",
    "CONTINUOUS, 0, false, 0R0!",
    "CONTINUOUS, 9, false, 0R9!",
    "CONTINUOUS, 0, true, 0RC0!"
  })
  void aMeasurementIsAskedForByItsCommand(Kind kind, int number, boolean checked, String text) {
    assertThat(Command.measure(ZERO, new Measurement(kind, number, checked)).text())
        .isEqualTo(text);
  }

  @Test
  void theOtherCommandsAreThoseOfTheStandard() {
    assertThat(Command.acknowledge(ZERO).text()).isEqualTo("0!");
    assertThat(Command.identify(ZERO).text()).isEqualTo("0I!");
    assertThat(Command.whichAddress().text()).isEqualTo("?!");
    assertThat(Command.changeAddress(ZERO, new SensorAddress('b')).text()).isEqualTo("0Ab!");
    assertThat(Command.sendData(ZERO, 9).text()).isEqualTo("0D9!");
    assertThat(Command.whichAddress().bytes()).containsExactly('?', '!');
  }

  @Test
  void sixtyTwoCharactersAreAddresses() {
    for (char c = 0; c < 256; c++) {
      boolean letterOrDigit = c < 128 && Character.isLetterOrDigit(c);
      assertThat(SensorAddress.isOne(c)).as("%d", (int) c).isEqualTo(letterOrDigit);
    }
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new SensorAddress('?'))
        .withMessage("the address of an SDI-12 sensor is 0 to 9, A to Z or a to z, not ?");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Measurement(Kind.ALONE, 10, false))
        .withMessage("measurement 10 is not 0 to 9");
  }

  @ParameterizedTest
  @CsvSource({
    "00001, ALONE, 0, 1",
    "00359, ALONE, 35, 9",
    "z9990, ALONE, 999, 0",
    "001320, CONCURRENT, 13, 20",
    "099999, CONCURRENT, 999, 99"
  })
  void whatIsAnnouncedIsAWaitAndACount(String line, Kind kind, int seconds, int values) {
    assertThat(Announcement.read(line, kind))
        .isEqualTo(new Understood<>(new Announcement(seconds, values)));
  }

  @ParameterizedTest
  @CsvSource({
    "0000, ALONE, 4",
    "001320, ALONE, 4",
    "00359, CONCURRENT, 5",
    "0+001, ALONE, 4",
    "0, ALONE, 4"
  })
  void anythingElseAnnouncesNothing(String line, Kind kind, int digits) {
    assertThat(Announcement.read(line, kind))
        .isEqualTo(
            new Malformed<>(
                "\"%s\" does not announce a measurement: %d digits follow the address"
                    .formatted(line, digits)));
  }

  @Test
  void anIdentificationHasItsFieldsByWidth() {
    assertThat(Identification.read("014INVENTEDION-2 1.0S/N 0042"))
        .isEqualTo(
            new Understood<>(new Identification("1.4", "INVENTED", "ION-2", "1.0", "S/N 0042")));
    assertThat(Identification.read("013INVENTEDION-2 1.0"))
        .isEqualTo(new Understood<>(new Identification("1.3", "INVENTED", "ION-2", "1.0", "")));
    assertThat(Identification.read("014INVENTEDION-2 1."))
        .isEqualTo(
            new Malformed<>(
                "\"014INVENTEDION-2 1.\" is no identification: two digits and 17 to 30 printable"
                    + " characters follow the address"));
    assertThat(Identification.read("014INVENTEDION-2 1.0S/N 0042567890"))
        .isInstanceOf(Malformed.class);
    assertThat(Identification.read("0A4INVENTEDION-2 1.0")).isInstanceOf(Malformed.class);
    assertThat(Identification.read("014INVENTED\u00fcON-2 1.0")).isInstanceOf(Malformed.class);
  }
}
