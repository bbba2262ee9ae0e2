package org.restpoint.acquisition.meaning;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.acquisition.event.Guidance;
import org.restpoint.acquisition.event.Result.Reported;
import org.restpoint.config.station.ChosenTable;
import org.restpoint.config.station.Quantity;
import org.restpoint.config.station.TableSettings;
import org.restpoint.config.station.TableSettings.Band;
import org.restpoint.config.station.TableSettings.Own;
import org.restpoint.config.station.TableSettings.Published;
import org.restpoint.stability.chemistry.Analyte;
import org.restpoint.stability.guidance.Cautions;

/** What a number is told to mean, by its record and the tables chosen. */
class MeaningTest {

  private static final Instant TIME = Instant.parse("2026-06-09T14:00:00Z");
  private static final TableSettings US = published("us-drinking-water");
  private static final TableSettings LATE_SPRING = published("late-spring-soil");

  private static TableSettings published(String table) {
    return new Published(table, Optional.empty(), Optional.empty());
  }

  private static Meaning meaning(String analyte, ChosenTable... tables) {
    return Meaning.of(Analyte.named(analyte).orElseThrow(), List.of(tables));
  }

  private static ChosenTable chosen(TableSettings table, String... kinds) {
    return new ChosenTable("mine", List.of(kinds), table);
  }

  private static Reported number(double value, String unit, String kind) {
    return new Reported(value, unit, "as-N", value / 50, 2, "=", kind);
  }

  private static Reported water(double value) {
    return number(value, "mg/L", "solution as measured");
  }

  private static Optional<List<Guidance>> told(Meaning meaning, Reported reported, String sample) {
    return meaning.told(reported, Optional.of(record(sample)), TIME, List.of());
  }

  private static Guidance one(Meaning meaning, Reported reported, String sample) {
    List<Guidance> told = told(meaning, reported, sample).orElseThrow();
    assertThat(told).hasSize(1);
    return told.get(0);
  }

  private static ObjectNode record(String sample) {
    try {
      return (ObjectNode) EventJson.mapper().readTree(sample.replace('\'', '"'));
    } catch (java.io.IOException e) {
      throw new AssertionError(e);
    }
  }

  @Test
  void nothingIsToldUnlessATableWasChosenForThatKindOfSample() {
    Meaning meaning = meaning("nitrate", chosen(US, "well water"));
    assertThat(told(meaning("nitrate"), water(12), "{'kind':'well water'}")).isEmpty();
    assertThat(told(meaning, water(12), "{'kind':'tile water'}")).isEmpty();
    assertThat(told(meaning, water(12), "{'number':'S-1'}")).isEmpty();
    assertThat(told(meaning, water(12), "{'kind':7}")).isEmpty();
    assertThat(meaning.told(water(12), Optional.empty(), TIME, List.of())).isEmpty();
    assertThat(told(meaning, water(12), "{'kind':'well water'}")).isPresent();
  }

  @Test
  void wellWaterIsJudgedWithTheCautionForInfants() {
    Guidance told =
        one(meaning("nitrate", chosen(US, "well water")), water(12), "{'kind':'well water'}");
    assertThat(told.table()).isEqualTo("mine");
    assertThat(told.meaning())
        .isEqualTo(
            "12.00 ± 0.24 mg/L as N: at or above the limit for drinking water of 10 mg/L as N.");
    assertThat(told.rate()).isEmpty();
    assertThat(told.source()).contains("40 CFR 141.62");
    assertThat(told.scope()).startsWith("United States");
    assertThat(told.caution())
        .startsWith("Do not drink it until a certified laboratory has tested it.")
        .contains("Infants under six months", "Do not boil", "extension advice");
  }

  @Test
  void everyTableForWellWaterCarriesThatCautionAndNoneForTileWater() {
    TableSettings own =
        new Own(
            "Invented",
            "invented",
            "nowhere",
            "never",
            Optional.empty(),
            Optional.of(LocalDate.of(2026, 6, 9)),
            "nitrate",
            Optional.of("as-ion"),
            List.of(
                new Band(Optional.of(new Quantity(50, "mg/L")), "little", Optional.empty()),
                new Band(Optional.empty(), "much", Optional.of("Think"))));
    Meaning meaning = meaning("nitrate", chosen(own, "well water", "tile water"));
    Guidance well = one(meaning, water(12), "{'kind':'well water'}");
    assertThat(well.meaning()).isEqualTo("53.1 ± 1.1 mg/L as nitrate: much.");
    assertThat(well.caution()).isEqualTo("Think. " + Cautions.DRINKING + " " + Cautions.ADVICE);
    assertThat(one(meaning, water(12), "{'kind':'tile water'}").caution())
        .isEqualTo("Think. " + Cautions.ADVICE);
    assertThat(
            meaning
                .told(
                    water(12),
                    Optional.of(record("{'kind':'tile water'}")),
                    TIME.plusSeconds(86_400),
                    List.of())
                .orElseThrow()
                .get(0)
                .meaning())
        .startsWith("This table does not apply: it was valid until 2026-06-09");
  }

  @Test
  void soilOfTheTopFootGetsARateInItsPublishedUnit() {
    Guidance told =
        one(
            meaning("nitrate", chosen(LATE_SPRING, "soil")),
            number(10, "mg/kg", "dry soil"),
            "{'kind':'soil','depthTopCentimetres':0,'depthBottomCentimetres':30}");
    Guidance.Rate rate = told.rate().orElseThrow();
    assertThat(rate.value()).isEqualTo(120);
    assertThat(rate.unit()).isEqualTo("lb N/acre");
    assertThat(rate.uncertainty()).hasValue(1.6);
    assertThat(rate.formula()).startsWith("(25 - 10) mg/kg as N x 8");
    assertThat(told.caution()).contains("crop adviser");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "{'kind':'soil'}",
        "{'kind':'soil','depthBottomCentimetres':30}",
        "{'kind':'soil','depthTopCentimetres':30,'depthBottomCentimetres':0}",
        "{'kind':'soil','depthTopCentimetres':'0','depthBottomCentimetres':30}",
        "{'kind':'soil','depthTopCentimetres':30,'depthBottomCentimetres':60}"
      })
  void soilOfAnotherOrNoDepthIsToldWhyAndHasNoRate(String sample) {
    Guidance told =
        one(
            meaning("nitrate", chosen(LATE_SPRING, "soil")),
            number(10, "mg/kg", "dry soil"),
            sample);
    assertThat(told.meaning()).startsWith("This table does not apply: ").contains("cm");
    assertThat(told.rate()).isEmpty();
    assertThat(told.caution()).isNotEmpty();
  }

  @Test
  void aNumberOfMoistSoilNeedsItsMoistureAndNotAnotherRecipe() {
    assertThat(
            one(
                    meaning("nitrate", chosen(LATE_SPRING, "soil")),
                    number(18, "mg/kg", "soil as received"),
                    "{'kind':'soil','depthTopCentimetres':0,'depthBottomCentimetres':30}")
                .meaning())
        .isEqualTo(
            "This table does not apply: it is of dry soil, the number of soil as received."
                + " Give moisturePercent of the sample, so that the number is of dry soil.");
  }

  @Test
  void anExtractIsNotTakenForTheSoilNorAnotherSolutionForWater() {
    assertThat(
            one(
                    meaning("nitrate", chosen(LATE_SPRING, "soil")),
                    water(10),
                    "{'kind':'soil','depthTopCentimetres':0,'depthBottomCentimetres':30}")
                .meaning())
        .isEqualTo(
            "This table does not apply: it is of dry soil, the number of the solution as measured."
                + " Name the recipe by which the sample was prepared, so that the number is of dry"
                + " soil.");
    assertThat(
            one(meaning("nitrate", chosen(US, "other")), water(10), "{'kind':'other'}").meaning())
        .contains("it is of water, the number of the solution as measured");
    assertThat(
            one(
                    meaning("nitrate", chosen(US, "other")),
                    number(10.6, "mg/L", "water"),
                    "{'kind':'other'}")
                .meaning())
        .contains("at or above");
  }

  @Test
  void anotherIonIsToldSo() {
    assertThat(
            one(
                    meaning("chloride", chosen(US, "well water")),
                    new Reported(12, "mg/L", "as-ion", 1, 2, "=", "water"),
                    "{'kind':'well water'}")
                .meaning())
        .contains("it is of nitrate, the number of chloride");
  }

  @Test
  void aFlaggedResultSaysFirstThatItIsAHintUnlessTheFlagIsJustALimit() {
    Meaning meaning = meaning("nitrate", chosen(US, "well water"));
    Optional<ObjectNode> sample = Optional.of(record("{'kind':'well water'}"));
    assertThat(
            meaning
                .told(water(12), sample, TIME, List.of("check-off", "above-range"))
                .orElseThrow()
                .get(0)
                .meaning())
        .startsWith("This result is flagged (check-off): treat what follows as a hint. 12.00");
    Reported weak = new Reported(2, "mg/L", "as-N", 0.2, 2, "<", "water");
    assertThat(
            meaning.told(weak, sample, TIME, List.of("below-range")).orElseThrow().get(0).meaning())
        .isEqualTo("below 2 mg/L as N: below the limit for drinking water of 10 mg/L as N.");
  }
}
