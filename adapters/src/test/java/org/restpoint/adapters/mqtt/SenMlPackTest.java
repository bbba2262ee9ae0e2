package org.restpoint.adapters.mqtt;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Random;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

/** Packs are resolved as the RFC prints them. */
class SenMlPackTest {

  private static List<SenMlRecord> resolve(String pack) throws RejectedMessageException {
    return SenMlPack.resolve(pack.getBytes(StandardCharsets.UTF_8));
  }

  private static String shown(List<SenMlRecord> records) {
    return records.stream()
        .map(
            record ->
                "%s %s %s %s"
                    .formatted(
                        record.name(),
                        record.unit().orElse("-"),
                        record.seconds().stripTrailingZeros().toPlainString(),
                        record
                            .value()
                            .map(value -> value.stripTrailingZeros().toPlainString())
                            .or(record::valueLabel)
                            .orElse("nothing")))
        .collect(Collectors.joining("; "));
  }

  @ParameterizedTest
  @CsvFileSource(
      resources = "/published/senml-examples.csv",
      delimiter = '|',
      quoteCharacter = '\'',
      numLinesToSkip = 5,
      maxCharsPerColumn = 10_000)
  void theExamplesOfTheRfcAreResolvedAsItSays(String section, String pack, String resolved)
      throws RejectedMessageException {
    assertThat(shown(resolve(pack))).as(section).isEqualTo(resolved);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '\'',
      value = {
        "[{\"bn\":\"a:\",\"bu\":\"V\"},{\"n\":\"e\",\"v\":1},{\"bn\":\"b:\",\"n\":\"e\",\"v\":2}]|a:e V 0 1; b:e V 0 2",
        "[{\"n\":\"e\",\"bv\":20.1,\"v\":0.2},{\"n\":\"e\",\"v\":-0.1},{\"n\":\"e\",\"bv\":0,\"v\":1}]|e - 0 20.3; e - 0 20; e - 0 1",
        "[{\"bt\":1.5e9,\"n\":\"e\",\"t\":-0.25,\"v\":1},{\"bt\":-60,\"n\":\"e\",\"t\":10,\"v\":2}]|e - 1499999999.75 1; e - -50 2",
        "[{\"n\":\"e\",\"s\":3}]|e - 0 nothing",
        "[{\"n\":\"e\",\"v\":1,\"l\":\"x\",\"ut\":10,\"colour\":\"red\"}]|e - 0 1",
        "[]|''"
      })
  void aBaseFieldHoldsUntilItIsGivenAnew(String pack, String resolved)
      throws RejectedMessageException {
    assertThat(shown(resolve(pack))).isEqualTo(resolved);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '\'',
      value = {
        "{\"n\":\"e\",\"v\":1}|expected a SenML pack, which is an array of records, found an object",
        "[7]|record 1: expected an object, found a number",
        "[{\"n\":\"e\",\"v\":1},{\"v\":2,\"n\":5}]|record 2: expected a text as n, found a number",
        "[{\"v\":2}]|record 1: it has no name",
        "[{\"n\":\"e\",\"v\":\"2\"}]|record 1: expected a number as v, found a string",
        "[{\"n\":\"e\",\"v\":2,\"vs\":\"b\"}]|record 1: it has two values, v and vs",
        "[{\"bver\":11,\"n\":\"e\",\"v\":2}]|record 1: it is of SenML version 11, and 10 is the latest that is understood",
        "[{\"n\":\"e\",\"v\":2,\"mode_\":1}]|record 1: it has the field mode_, which is not understood",
        "[{\"n\":\"e\",\"v\":2,\"t\":1e999999999}]|record 1: its t is too large a number",
        "[{\"n\":\"e\",\"v\":2,\"v\":3}]|it is not strict JSON (line 1, column 20)"
      })
  void whatIsNoPackIsRejectedWithItsReason(String pack, String reason) {
    assertThatThrownBy(() -> resolve(pack))
        .isInstanceOf(RejectedMessageException.class)
        .hasMessage(reason);
  }

  @ParameterizedTest
  @CsvSource({"1e-999999999,0", "0e999999999,0", "1.000000000000000000000000000000000001,1"})
  void aNumberOfMonstrousExponentCostsNothing(String written, long millis)
      throws RejectedMessageException {
    SenMlRecord record = resolve("[{\"n\":\"e\",\"v\":1,\"t\":%s}]".formatted(written)).get(0);
    assertThat(ExactNumber.whole(record.seconds(), 0)).isEqualTo(millis);
  }

  @Test
  void aPackWithWrongBytesIsResolvedOrRejected() {
    byte[] sound =
        "[{\"bn\":\"n:\",\"bt\":1.5e9,\"bu\":\"V\",\"n\":\"e\",\"t\":-2,\"v\":0.1e-3},{\"vs\":\"a\"}]"
            .getBytes(StandardCharsets.UTF_8);
    Random random = new Random(8428);
    int rejected = 0;
    for (int i = 0; i < 20_000; i++) {
      byte[] wrong = sound.clone();
      for (int changes = 1 + random.nextInt(3); changes > 0; changes--) {
        wrong[random.nextInt(wrong.length)] = (byte) (32 + random.nextInt(96));
      }
      try {
        assertThat(SenMlPack.resolve(wrong)).isNotNull();
      } catch (RejectedMessageException e) {
        rejected++;
        assertThat(e).hasMessageMatching("\\p{Print}{5,200}");
      }
    }
    assertThat(rejected).isBetween(1_000, 19_999);
  }
}
