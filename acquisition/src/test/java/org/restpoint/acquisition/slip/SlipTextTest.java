package org.restpoint.acquisition.slip;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A slip as it comes out of the printer, line by line. */
class SlipTextTest {

  @ParameterizedTest
  @CsvSource({"soil, 42", "soil, 80", "unsettled, 42"})
  void theSlipIsTheOneInTheFile(String result, int width) {
    assertThat(Slips.text(Slips.result(result), width))
        .isEqualTo(Slips.file("%s-%d.txt".formatted(result, width)));
  }

  @Test
  void theSlipOnThePageIsWhatIsPrinted() throws IOException {
    assertThat(Files.readString(Path.of("README.md")))
        .contains("```text\n" + Slips.text(Slips.result("water"), 42) + "```\n");
  }

  @ParameterizedTest
  @ValueSource(ints = {32, 33, 42, 57, 100})
  void noLineIsTooLongAndNothingIsCut(int width) {
    Slip slip =
        Slip.of(
            Slips.changed(
                "soil",
                json ->
                    json.withObject("/sample")
                        .put("grower", "Dampfschifffahrtsgesellschaftskapitänswitwenrente & 株式会社")
                        .put("aFieldThatNobodyForesaw", "x".repeat(300))),
            Slips.NITRATE);
    String text = SlipText.of(slip, width);
    assertThat(text.lines()).allMatch(line -> Columns.of(line) <= width && !line.endsWith(" "));
    String letters = text.replaceAll("\\s", "");
    assertThat(slip.sections())
        .flatExtracting(Slip.Section::parts)
        .allSatisfy(
            part -> assertThat(letters).contains(words(part).replaceAll("[\\s\u00a0]", "")));
  }

  @Test
  void aSlipWithAllThatThereIsFitsOnOnePageOfSixLinesToTheInch() {
    assertThat(Slips.text(Slips.result("soil"), 80).lines()).hasSizeLessThanOrEqualTo(66);
  }

  @ParameterizedTest
  @ValueSource(ints = {31, 101})
  void aWidthThatNoPaperHasIsRefused(int width) {
    assertThatThrownBy(() -> Slips.text(Slips.result("soil"), width))
        .hasMessage("expected 32 to 100 columns, found " + width);
  }

  private static String words(Slip.Part part) {
    if (part instanceof Slip.Fact fact) {
      return fact.text();
    }
    return part instanceof Slip.Headline headline ? headline.text() : ((Slip.Sentence) part).text();
  }
}
