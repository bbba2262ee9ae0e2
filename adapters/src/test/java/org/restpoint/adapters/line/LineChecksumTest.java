package org.restpoint.adapters.line;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.restpoint.adapters.checksum.Crc16;
import org.restpoint.adapters.line.LineChecksum.Checked;

/** The sums of 123456789 are the published check values, and 31 for the exclusive or. */
class LineChecksumTest {

  private static final LineChecksum XOR = new LineChecksum.ExclusiveOr();
  private static final LineChecksum CRC = new LineChecksum.Crc(Crc16.MODBUS);

  private static Checked checked(LineChecksum checksum, String line) {
    return checksum.checked(line, LineEncoding.LATIN_1);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "123456789*31        | 123456789",
        "$123456789*31       | $123456789",
        "!123456789*31       | !123456789",
        "noise$123456789*6B  | noise$123456789",
        "12345*6789*1B       | 12345*6789",
        "'  123456789*31 \r' | '  123456789'",
        "'\n $123456789*31'  | ' $123456789'",
        "jjk*6b              | jjk",
      })
  void theExclusiveOrIsThatOfWhatStandsBeforeTheLastStar(String line, String rest) {
    assertThat(checked(XOR, line)).isEqualTo(new Checked.Sound(rest));
  }

  @Test
  void aWrongExclusiveOrSaysWhatItShouldBe() {
    assertThat(checked(XOR, "$123456789*0A"))
        .isEqualTo(new Checked.Wrong("it ends in 0A, and its characters give 31"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "$1", "*31x", "123456789*3", "123456789*3G", "123456789 31", "31"})
  void aLineWithoutAnExclusiveOrSaysWhatIsMissing(String line) {
    assertThat(checked(XOR, line))
        .isEqualTo(new Checked.Wrong("it does not end in * and two hexadecimal digits"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {"123456789*4B37", "'123456789,4b37'", "123456789;4B37", "'123456789\t4B37 \r'"})
  void theRemainderStandsBehindASeparatorThatDoesNotCount(String line) {
    assertThat(checked(CRC, line)).isEqualTo(new Checked.Sound("123456789"));
  }

  @Test
  void aWrongRemainderSaysWhatItShouldBe() {
    assertThat(checked(CRC, "123456788*4B37"))
        .isEqualTo(new Checked.Wrong("it ends in 4B37, and its characters give 8BF6"));
    assertThat(checked(new LineChecksum.Crc(Crc16.XMODEM), "123456789*31C3"))
        .isInstanceOf(Checked.Sound.class);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "4B37", "1234567894B37", "123456789*4B3", "123456789*4B3X"})
  void aLineWithoutARemainderSaysWhatIsMissing(String line) {
    assertThat(checked(CRC, line))
        .isEqualTo(new Checked.Wrong("it does not end in a separator and four hexadecimal digits"));
  }

  @Test
  void theSumIsOfTheBytesAsTheyWereSent() {
    assertThat(XOR.checked("1\u00B51*77", LineEncoding.UTF_8))
        .isEqualTo(new Checked.Sound("1\u00B51"));
    assertThat(XOR.checked("1\u00B51*B5", LineEncoding.LATIN_1))
        .isEqualTo(new Checked.Sound("1\u00B51"));
  }

  @Test
  void withoutAChecksumEveryLineIsSound() {
    assertThat(checked(LineChecksum.NONE, "1*00")).isEqualTo(new Checked.Sound("1*00"));
  }
}
