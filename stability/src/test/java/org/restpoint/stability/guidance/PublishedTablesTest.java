package org.restpoint.stability.guidance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.restpoint.stability.Published;
import org.restpoint.stability.chemistry.Basis;
import org.restpoint.stability.uncertainty.Source.Quantity;

/** The tables that come with the program give what their sources give. */
class PublishedTablesTest {

  private static final GuidanceTable USUAL =
      PublishedTables.lateSpringSoil(PublishedTables.CRITICAL, Optional.empty());

  static List<List<String>> lateSpring() {
    return Published.table("late-spring-nitrate").rows();
  }

  @ParameterizedTest
  @MethodSource("lateSpring")
  void theLateSpringTestGivesItsPublishedRates(List<String> row) {
    GuidanceTable table =
        PublishedTables.lateSpringSoil(
            Double.parseDouble(row.get(1)), Optional.of("as in the example"));
    Found found = Numbers.soil(Relation.EQUAL, Double.parseDouble(row.get(0)), 0.5);

    assertThat(Numbers.applies(table, found).rate().orElseThrow().poundsPerAcre())
        .isEqualTo(Double.parseDouble(row.get(2)));
  }

  @Test
  void theUncertaintyOfTheTestIsEightfoldThatOfTheRateAndNoneIsLeftAtZero() {
    Judgement.Applies below = Numbers.applies(USUAL, Numbers.soil(Relation.EQUAL, 10, 1.2));
    assertThat(below.rate().orElseThrow().expandedUncertainty()).hasValue(8 * 1.2);
    assertThat(below.rate().orElseThrow().reckoned())
        .isEqualTo("(25 - 10) mg/kg as N x 8 lb N/acre for each = 120 lb N/acre (135 kg N/ha)");
    assertThat(below.meaning())
        .isEqualTo(
            "10.0 ± 1.2 mg/kg as N: below the critical 25 mg/kg: corn is likely to pay for more"
                + " nitrogen. The published rate is 120.0 ± 9.6 lb N/acre.");

    Rate none = Numbers.applies(USUAL, Numbers.soil(Relation.EQUAL, 31, 2)).rate().orElseThrow();
    assertThat(none.poundsPerAcre()).isZero();
    assertThat(none.expandedUncertainty()).isEmpty();
    assertThat(none.reckoned())
        .isEqualTo("31.0 ± 2.0 mg/kg as N is not below the critical 25 mg/kg as N: 0");
  }

  @Test
  void aTestNearTheCriticalNumberSaysThatNothingOrSomeMayBeNeeded() {
    assertThat(Numbers.applies(USUAL, Numbers.soil(Relation.EQUAL, 24, 2)).meaning())
        .contains("too near 25 mg/kg as N to tell")
        .endsWith("The published rate is 8 ± 16 lb N/acre, and none at all lies within that.");
    assertThat(Numbers.applies(USUAL, Numbers.soil(Relation.EQUAL, 26, 2)).meaning())
        .endsWith("The published rate is 0 lb N/acre, but up to 8 lies within reach.");
  }

  @Test
  void aTestThatIsOnlyALimitHasARangeOfRatesAndNoRate() {
    Judgement.Applies weak = Numbers.applies(USUAL, Numbers.soil(Relation.BELOW, 2, 0));
    assertThat(weak.rate()).isEmpty();
    assertThat(weak.meaning()).contains("between 184 and 200 lb N/acre");
    Judgement.Applies strong = Numbers.applies(USUAL, Numbers.soil(Relation.ABOVE, 20, 1));
    assertThat(strong.rate()).isEmpty();
    assertThat(strong.meaning()).contains("between 0 and 48 lb N/acre");
    assertThat(
            Numbers.applies(USUAL, Numbers.soil(Relation.ABOVE, 40, 2))
                .rate()
                .orElseThrow()
                .poundsPerAcre())
        .isZero();
  }

  @Test
  void anAdjustedCriticalNumberIsToldWithItsReason() {
    GuidanceTable table =
        PublishedTables.lateSpringSoil(
            PublishedTables.CRITICAL_AFTER_A_WET_SPRING, Optional.of("wet spring"));
    assertThat(table.source())
        .endsWith("critical number 21 mg/kg instead of 25, because: wet spring");
    assertThat(table.bands().get(0).says()).contains("21 mg/kg");
  }

  @Test
  void theLimitsOfDrinkingWaterAreThosePublishedOnEitherBasis() {
    Published limits = Published.table("drinking-water-limits");
    for (List<String> row : limits.rows()) {
      GuidanceTable table =
          row.get(0).equals(PublishedTables.US_DRINKING_WATER)
              ? PublishedTables.usDrinkingWater()
              : PublishedTables.whoDrinkingWater();
      double limit = table.bands().get(1).from().orElseThrow();
      Measurand asN = Numbers.nitrate("water", "mg/L", Basis.AS_N);
      assertThat(limit).isEqualTo(Double.parseDouble(row.get(2)));
      assertThat(table.measurand().basis().code()).isEqualTo(row.get(1));
      assertThat(limit * table.measurand().factorTo(asN).orElseThrow())
          .isCloseTo(Double.parseDouble(row.get(3)), within(0.05));
    }
  }

  @Test
  void oneWaterIsJudgedAlikeInWhateverUnitAndBasisItIsTold() {
    double molar = 10.8e-3 / 14.007;
    for (Found found :
        List.of(
            of("mg/L", Basis.AS_N, 10.8),
            of("ug/L", Basis.AS_N, 10_800),
            of("mg/L", Basis.AS_ION, 10.8 * 62.004 / 14.007),
            of("mmol/L", Basis.AS_ION, 1e3 * molar),
            of("mol/L", Basis.AS_N, molar))) {
      assertThat(Judge.of(PublishedTables.usDrinkingWater(), found).meaning())
          .isEqualTo(
              "10.80 ± 0.11 mg/L as N: at or above the limit for drinking water of 10 mg/L as N.");
      assertThat(Judge.of(PublishedTables.whoDrinkingWater(), found).meaning())
          .isEqualTo(
              "47.81 ± 0.48 mg/L as nitrate: below the guideline value for drinking water of 50 mg/L"
                  + " as nitrate.");
    }
  }

  private static Found of(String unit, Basis basis, double value) {
    return new Found(
        Numbers.nitrate("water", unit, basis),
        value,
        value / 100,
        Relation.EQUAL,
        Optional.empty(),
        Numbers.DAY);
  }

  @Test
  void theAutumnReadingIsAnAmountOnTheFieldWithoutABandOrARate() {
    Published area = Published.table("soil-area");
    for (List<String> row : area.rows()) {
      GuidanceTable table =
          PublishedTables.autumnResidualSoil(
              Quantity.exactly("bulk density", "g/cm3", Double.parseDouble(row.get(2))));
      Depth depth = new Depth(0, 2.54 * Double.parseDouble(row.get(1)));
      Judgement.Applies judged =
          Numbers.applies(
              table,
              Numbers.soil(Relation.EQUAL, Double.parseDouble(row.get(0)), 0, Optional.of(depth)));
      assertThat(judged.bands()).isEmpty();
      assertThat(judged.rate()).isEmpty();
      assertThat(judged.meaning())
          .contains(
              Figures.number(Double.parseDouble(row.get(4)))
                  + " kg/ha or "
                  + Figures.number(Double.parseDouble(row.get(3)))
                  + " lb/acre of nitrate as N.");
    }
  }

  @Test
  void theAutumnReadingCarriesTheUncertaintyOfTestAndBulkDensity() {
    GuidanceTable table =
        PublishedTables.autumnResidualSoil(Quantity.of("bulk density", "g/cm3", 1.3, 0.1));
    assertThat(Numbers.applies(table, Numbers.soil(Relation.EQUAL, 12, 1)).meaning())
        .isEqualTo(
            "12.0 ± 1.0 mg/kg as N in 0 to 30 cm at a bulk density of 1.3 g/cm3 is 46.8 ± 8.2 kg/ha"
                + " or 41.8 ± 7.3 lb/acre of nitrate as N.");
    assertThat(Numbers.applies(table, Numbers.soil(Relation.BELOW, 2, 0.2)).meaning())
        .contains("is less than 7.8 kg/ha or less than");
  }

  @Test
  void eachSaysWhoseAdviceComesFirstAndWaterWhatToDoForInfants() {
    List<GuidanceTable> water =
        List.of(PublishedTables.usDrinkingWater(), PublishedTables.whoDrinkingWater());
    assertThat(water)
        .allSatisfy(
            table ->
                assertThat(table.caution())
                    .contains("Infants under six months", "Do not boil", "certified laboratory"));
    assertThat(water).allSatisfy(table -> assertThat(table.caution()).contains(Cautions.ADVICE));
    assertThat(USUAL.caution()).contains("crop adviser", Cautions.ADVICE);
  }
}
