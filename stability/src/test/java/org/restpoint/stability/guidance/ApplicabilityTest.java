package org.restpoint.stability.guidance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.chemistry.Analyte;
import org.restpoint.stability.chemistry.Basis;

/** A number of another kind is not judged, and why is told. */
class ApplicabilityTest {

  private static final GuidanceTable LATE_SPRING =
      PublishedTables.lateSpringSoil(PublishedTables.CRITICAL, Optional.empty());

  private static List<String> codes(GuidanceTable table, Found found) {
    return ((Judgement.DoesNotApply) Judge.of(table, found))
        .reasons().stream().map(Reason::code).toList();
  }

  private static GuidanceTable until(GuidanceTable table, LocalDate last) {
    return new GuidanceTable(
        table.title(),
        table.source(),
        new Scope(
            table.scope().region(),
            table.scope().season(),
            table.scope().depth(),
            table.scope().published(),
            Optional.of(last)),
        table.measurand(),
        table.bands(),
        table.formula(),
        table.caution());
  }

  @Test
  void anotherIonIsNotJudged() {
    Found chloride =
        new Found(
            new Measurand(Analyte.named("chloride").orElseThrow(), "water", "mg/L", Basis.AS_ION),
            12,
            1,
            Relation.EQUAL,
            Optional.empty(),
            Numbers.DAY);
    assertThat(codes(PublishedTables.usDrinkingWater(), chloride)).containsExactly("other-analyte");
  }

  @Test
  void waterIsNotJudgedByATableOfSoilNorAnExtractAsTheSoil() {
    assertThat(codes(LATE_SPRING, Numbers.water(Relation.EQUAL, 12, 1)))
        .containsExactly("other-matter", "depth-unknown");
    assertThat(codes(PublishedTables.usDrinkingWater(), Numbers.soil(Relation.EQUAL, 12, 1)))
        .containsExactly("other-matter");
  }

  @Test
  void anotherUnitThatNoMolarMassJoinsIsNotJudged() {
    Found odd =
        new Found(
            Numbers.nitrate("water", "mg/kg", Basis.AS_N),
            12,
            1,
            Relation.EQUAL,
            Optional.empty(),
            Numbers.DAY);
    assertThat(codes(PublishedTables.usDrinkingWater(), odd)).containsExactly("other-unit");
  }

  @ParameterizedTest
  @CsvSource({"0, 30", "0, 30.48", "0, 28.5", "2, 32"})
  void aLayerThatIsNearlyTheTopFootIsTaken(double top, double bottom) {
    Found found = Numbers.soil(Relation.EQUAL, 12, 1, Optional.of(new Depth(top, bottom)));
    assertThat(Judge.of(LATE_SPRING, found)).isInstanceOf(Judgement.Applies.class);
  }

  @ParameterizedTest
  @CsvSource({"0, 15", "0, 60", "30, 60", "0, 28", "2.5, 30"})
  void anotherLayerIsNotJudged(double top, double bottom) {
    Found found = Numbers.soil(Relation.EQUAL, 12, 1, Optional.of(new Depth(top, bottom)));
    assertThat(codes(LATE_SPRING, found)).containsExactly("other-depth");
  }

  @Test
  void whatIsMissingIsToldWithWhatToDo() {
    assertThat(
            Judge.of(LATE_SPRING, Numbers.soil(Relation.EQUAL, 12, 1, Optional.empty())).meaning())
        .isEqualTo(
            "This table does not apply: the sample's record does not say from where in the soil it"
                + " was taken, and it is of 0 to 30.48 cm. Give depthTopCentimetres and"
                + " depthBottomCentimetres of the sample.");
  }

  @Test
  void aTableHoldsOnItsLastDayAndNotOnTheNext() {
    Found found = Numbers.water(Relation.EQUAL, 12, 1);
    GuidanceTable table = PublishedTables.usDrinkingWater();
    assertThat(Judge.of(until(table, Numbers.DAY), found)).isInstanceOf(Judgement.Applies.class);
    assertThat(codes(until(table, Numbers.DAY.minusDays(1)), found))
        .containsExactly("table-outdated");
  }

  @Test
  void aLayerHasItsUpperEdgeAboveItsLowerOne() {
    assertThatIllegalArgumentException().isThrownBy(() -> new Depth(30, 30));
    assertThatIllegalArgumentException().isThrownBy(() -> new Depth(-1, 30));
    assertThatIllegalArgumentException().isThrownBy(() -> new Depth(Double.NaN, 30));
  }
}
