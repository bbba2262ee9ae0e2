package org.restpoint.adapters.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.restpoint.adapters.quantity.Meanings;
import org.restpoint.adapters.quantity.Parsed;
import org.restpoint.adapters.quantity.Parsed.Rejected;
import org.restpoint.adapters.quantity.Parsed.Values;
import org.restpoint.stability.reading.Reading;

class LinePatternTest {

  private static final LinePattern BOTH = of("E=(?<millivolts>.*?) mV(?: T=(?<celsius>.*?) C)?");
  private static final LinePattern BARE = of("(?<millivolts>.+)");

  private static LinePattern of(String regex) {
    return new LinePattern(
        Pattern.compile(regex), Meanings.of(regex), DecimalMark.POINT, Optional.empty());
  }

  /** What a line says that is this probe's, or why the pattern does not read it. */
  private static Parsed said(LinePattern pattern, String line) {
    LineReading found = pattern.read(line);
    return found instanceof LineReading.Own own
        ? own.said()
        : new Rejected(((LineReading.Unread) found).reason());
  }

  private static Values potential(double millivolts) {
    return new Values(OptionalDouble.of(millivolts), OptionalDouble.empty());
  }

  @Test
  void readsBothGroups() {
    assertThat(said(BOTH, "E=-12.34 mV T=+25.1 C"))
        .isEqualTo(new Values(OptionalDouble.of(-12.34), OptionalDouble.of(25.1)));
  }

  @Test
  void theTemperatureMayBeMissingFromTheLineOrFromThePattern() {
    assertThat(said(BOTH, "E=1e2 mV")).isEqualTo(potential(100));
    assertThat(said(BARE, " -.5 ")).isEqualTo(potential(-0.5));
  }

  @Test
  void theWholeLineMustMatchButNotTheWhiteSpaceAroundIt() {
    assertThat(said(BOTH, " \tE=7. mV  ")).isEqualTo(potential(7));
    assertThat(said(BOTH, "x E=7 mV")).isEqualTo(new Rejected("it does not match the pattern"));
    assertThat(said(of(" (?<millivolts>\\d+)"), " 7")).isEqualTo(potential(7));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "NaN      | millivolts is \"NaN\", which is not a number",
        "Infinity | millivolts is \"Infinity\", which is not a number",
        "0x1p3    | millivolts is \"0x1p3\", which is not a number",
        "1d       | millivolts is \"1d\", which is not a number",
        "1.2.3    | millivolts is \"1.2.3\", which is not a number",
        "-        | millivolts is \"-\", which is not a number",
        "12,3     | millivolts is \"12,3\", which is not a number: a decimal point is expected",
        "10000.1  | 10000.1 mV is outside -10000 to 10000 mV",
        "-1e400   | -Infinity mV is outside -10000 to 10000 mV",
      })
  void whatIsNoBelievablePotentialIsRejected(String text, String reason) {
    assertThat(said(BARE, text)).isEqualTo(new Rejected(reason));
  }

  @Test
  void whatIsNoBelievableTemperatureIsRejected() {
    assertThat(said(BOTH, "E=1 mV T=130.5 C"))
        .isEqualTo(new Rejected("130.5 Cel is outside -30 to 130 Cel"));
    assertThat(said(BOTH, "E=1 mV T=-30.5 C"))
        .isEqualTo(new Rejected("-30.5 Cel is outside -30 to 130 Cel"));
    assertThat(said(BOTH, "E=1 mV T=-- C"))
        .isEqualTo(new Rejected("celsius is \"--\", which is not a number"));
  }

  @Test
  void theEndsOfWhatIsBelievedAreBelieved() {
    assertThat(said(BOTH, "E=-10000 mV T=-30 C")).isInstanceOf(Values.class);
    assertThat(said(BOTH, "E=10000 mV T=130 C")).isInstanceOf(Values.class);
  }

  @Test
  void aMatchWithoutThePotentialIsRejected() {
    assertThat(said(of("status|(?<millivolts>\\d+)"), "status"))
        .isEqualTo(new Rejected("there is no millivolts"));
  }

  @Test
  void aThermometersPatternHasCelsiusAlone() {
    LinePattern thermometer = of("busy|T=(?<celsius>.*) C");
    assertThat(said(thermometer, "T=-1.25 C"))
        .isEqualTo(new Values(OptionalDouble.empty(), OptionalDouble.of(-1.25)));
    assertThat(said(thermometer, "T=130.5 C"))
        .isEqualTo(new Rejected("130.5 Cel is outside -30 to 130 Cel"));
    assertThat(said(thermometer, "busy")).isEqualTo(new Rejected("there is no celsius"));
  }

  @Test
  void anElectrodesTemperatureAloneIsNoReading() {
    assertThat(said(of("(?<millivolts>\\d+)|T=(?<celsius>\\d+)"), "T=25"))
        .isEqualTo(new Rejected("there is no millivolts"));
  }

  @Test
  void aPatternWithNeitherGroupIsRefused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> plain(Pattern.compile("E=(?<mv>.*) mV")))
        .withMessage(
            "the pattern 'E=(?<mv>.*) mV' has no group named millivolts:"
                + " write (?<millivolts>...) around the number");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> plain(Pattern.compile("(?<millivolts>.)", Pattern.LITERAL)));
  }

  private static LinePattern plain(Pattern pattern) {
    return new LinePattern(pattern, Meanings.MILLIVOLTS, DecimalMark.POINT, Optional.empty());
  }

  @Test
  void aLineIsOfTheChannelThatItNames() {
    Pattern pattern = Pattern.compile("(?:CH(?<channel>.+?):)?(?<millivolts>.+)");
    LinePattern second =
        new LinePattern(pattern, Meanings.MILLIVOLTS, DecimalMark.POINT, Optional.of("2"));

    assertThat(second.read("CH2:7")).isEqualTo(new LineReading.Own(potential(7)));
    assertThat(second.read("CH 2 :7")).isEqualTo(new LineReading.Own(potential(7)));
    assertThat(second.read("CH2:over")).isInstanceOf(LineReading.Own.class);
    assertThat(second.read("CH12:7")).isEqualTo(new LineReading.OfChannel("12"));
    assertThat(second.read("CH1:over")).isEqualTo(new LineReading.OfChannel("1"));
    assertThat(second.read("7")).isEqualTo(new LineReading.Unread("it names no channel"));
    assertThatIllegalArgumentException()
        .isThrownBy(
            () ->
                new LinePattern(
                    Pattern.compile("(?<millivolts>.+)"),
                    Meanings.MILLIVOLTS,
                    DecimalMark.POINT,
                    Optional.of("2")))
        .withMessage(
            "the pattern '(?<millivolts>.+)' has no group named channel:"
                + " write (?<channel>...) around it");
  }

  @Test
  void aDecimalCommaIsReadWhereItIsExpectedAndAPointThenIsNot() {
    LinePattern pattern =
        new LinePattern(
            Pattern.compile("(?<millivolts>.+?);(?<celsius>.+)"),
            Meanings.MILLIVOLTS_AND_CELSIUS,
            DecimalMark.COMMA,
            Optional.empty());

    assertThat(said(pattern, "-12,34;25,1"))
        .isEqualTo(new Values(OptionalDouble.of(-12.34), OptionalDouble.of(25.1)));
    assertThat(said(pattern, "-12.34;25,1"))
        .isEqualTo(
            new Rejected(
                "millivolts is \"-12.34\", which is not a number: a decimal comma is expected"));
  }

  @Test
  @Timeout(60)
  void aPatternThatRunsAwayIsGivenUp() {
    String line = "1".repeat(LineFraming.LONGEST_LINE_BYTES);
    assertThat(said(of("(?<millivolts>(?:1|1)*)x\\1"), line))
        .isEqualTo(new Rejected("the pattern takes too long to match it"));
    assertThat(said(of("(?<millivolts>(?:1+)+)x"), line)).isInstanceOf(Rejected.class);
  }

  @Test
  void valuesBecomeAReadingCutToTheMillisecond() {
    assertThat(potential(1.5).at(Instant.ofEpochSecond(7, 8_999_999)))
        .isEqualTo(Reading.ofMillivolts(Instant.ofEpochMilli(7_008), 1.5));
  }
}
