package org.restpoint.acquisition.slip;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What a slip says of results of every kind. */
class SlipTest {

  private static String said(String result, Consumer<ObjectNode> change, Subject subject) {
    return SlipText.of(Slip.of(Slips.changed(result, change), subject), 100);
  }

  private static String water(Consumer<ObjectNode> change) {
    return said("water", change, Slips.NITRATE);
  }

  @Test
  void belowTheDetectionLimitThereIsNoBareNumber() {
    String slip =
        water(
            json -> {
              json.withObject("/reported").put("value", 0.5).put("relation", "<");
              json.withArray("/flags").add("below-range");
              json.put("quality", 3);
            });
    assertThat(slip)
        .contains("\n  less than 0.50 mg/L nitrate-N\n")
        .contains("it is not known to be zero")
        .contains("only that it is less than the number shown (below-range)")
        .doesNotContain("The true value");
  }

  @Test
  void aboveTheRangeItSaysToDilute() {
    assertThat(water(json -> json.withObject("/reported").put("value", 1000).put("relation", ">")))
        .contains("\n  more than 1000.00 mg/L nitrate-N\n")
        .contains("dilute it and read it again");
  }

  @Test
  void nitrateCountedAsTheIonSaysSo() {
    assertThat(water(json -> json.withObject("/reported").put("basis", "as-ion")))
        .contains("19.98 ± 0.25 mg/L whole nitrate (not as N)")
        .contains("nitrate-N, the number is 4.43 times\nsmaller.");
  }

  @Test
  void aPhHasNoUnitAndNoBasis() {
    String slip =
        said(
            "water",
            json ->
                json.withObject("/reported")
                    .put("value", 6.8412)
                    .put("uncertainty", 0.031)
                    .put("unit", "[pH]")
                    .put("basis", "as-ion"),
            Slips.of("hydrogen"));
    assertThat(slip)
        .startsWith("pH: sample W-17\n")
        .contains("\n  pH 6.841 ± 0.031\n")
        .contains("between 6.810 and 6.872 in about 95")
        .doesNotContain("Counted as")
        .doesNotContain("Infants");
  }

  @Test
  void ofAProbeThatTheStationFileHasNoMoreTheBasisIsStillTold() {
    assertThat(said("water", json -> {}, Slips.ofNobodyKnows()))
        .startsWith("Concentration: sample W-17\n")
        .contains("19.98 ± 0.25 mg/L as N")
        .contains("Read       2026-04-02 14:06 UTC\n");
  }

  @ParameterizedTest
  @ValueSource(strings = {"tile water", "well water", "surface water", "other", ""})
  void nitrateInWaterThatSomebodyMayDrinkCarriesTheCautionForInfants(String kind) {
    assertThat(water(json -> json.withObject("/sample").put("kind", kind)))
        .contains("TAKE CARE\nInfants: nitrate in drinking water");
  }

  @Test
  void soilOtherIonsAndKnownSolutionsDoNot() {
    assertThat(Slips.text(Slips.result("soil"), 80)).doesNotContain("Infants");
    assertThat(said("water", json -> {}, Slips.of("potassium"))).doesNotContain("Infants");
    assertThat(check("passed")).doesNotContain("Infants");
  }

  @Test
  void aCheckSaysWhatWasExpected() {
    assertThat(check("failed"))
        .startsWith("Nitrate: check standard mid\n")
        .contains("Check  check standard mid\n")
        .contains("Expected  20 mg/L nitrate-N\nRecovery  99.9 ± 1.3 %\nVerdict   failed\n")
        .doesNotContain("How the sample was taken");
  }

  private static String check(String verdict) {
    return water(
        json -> {
          json.remove("sample");
          json.putObject("verification")
              .put("role", "check-standard")
              .put("standard", "mid")
              .put("expected", 20)
              .put("difference", -0.017)
              .put("recoveryPercent", 99.915)
              .put("recoveryUncertaintyPercent", 1.26)
              .put("verdict", verdict);
        });
  }

  @Test
  void aRefusedReadingSaysWhyAndWhatToDo() {
    assertThat(said("unsettled", json -> json.put("outcome", "refused"), Slips.NITRATE))
        .contains("  No number: it was refused\nNot at rest within 10 min")
        .contains("Look for an air bubble")
        .doesNotContain("(unsettled)")
        .doesNotContain("No table was chosen");
  }

  @Test
  void oneCautionOfTwoTablesIsPrintedOnce() {
    String slip =
        said(
            "soil",
            json -> {
              ObjectNode second = json.withArray("/guidance").get(0).deepCopy();
              json.withArray("/guidance").add(second.put("title", "Autumn"));
            },
            Slips.NITRATE);
    assertThat(slip.split("Ask your local extension service before you spread", -1)).hasSize(2);
  }

  @Test
  void whatCouldMoveATerminalIsPrintedAsAMark() {
    assertThat(
            water(
                json ->
                    json.withObject("/sample")
                        .put("grower", "A\u001b[2J\u202eB")
                        .put("notes", "one\r\ntwo\tthree")))
        .contains("Grower  A\ufffd[2J\ufffdB\n")
        .contains("Notes   one two three\n");
  }

  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
          19.983, 0.2514, 19.98 ± 0.25
          4567, 123.4, 4570 ± 120
          1234, 99.6, 1230 ± 100
          10, 0.5, 10.00 ± 0.50
          0.00123, 0.0000456, 0.001230 ± 0.000046
          0, 0.3, 0.00 ± 0.30
          -0.02, 1, 0.0 ± 1.0
          5.55555, 0, 5.556
          5.5, NaN, 5.5
          """)
  void theUncertaintyHasTwoDigitsAndTheValueEndsWithIt(
      double value, double uncertainty, String told) {
    assertThat(AmountWords.rounded(value, uncertainty).replace('\u00a0', ' ')).isEqualTo(told);
  }

  @Test
  void anIntervalDoesNotReachBelowNothing() {
    assertThat(water(json -> json.withObject("/reported").put("value", 0.1)))
        .contains("between 0 and 0.35 mg/L");
  }
}
