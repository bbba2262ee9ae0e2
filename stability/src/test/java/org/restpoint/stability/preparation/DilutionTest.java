package org.restpoint.stability.preparation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.restpoint.stability.Published;
import org.restpoint.stability.chemistry.Analyte;
import org.restpoint.stability.uncertainty.Budget;
import org.restpoint.stability.uncertainty.Contribution;
import org.restpoint.stability.uncertainty.MonteCarlo;
import org.restpoint.stability.uncertainty.Source.Quantity;

class DilutionTest {

  private static final double NITROGEN = 14.007;
  private static final double POTASSIUM_NITRATE =
      Analyte.named("potassium").orElseThrow().gramsPerMole()
          + Analyte.named("nitrate").orElseThrow().gramsPerMole();

  private static final Volume PIPETTE =
      Volume.within("pipette 10 mL", 10, 0.02, Tolerance.TRIANGULAR);
  private static final Volume FLASK =
      Volume.within("flask 100 mL", 100, 0.1, Tolerance.RECTANGULAR);

  private static Stock potassiumNitrate(double grams, double millilitres) {
    return new Stock(
        Quantity.of("potassium nitrate", "g", grams, 0.0002),
        Quantity.exactly("purity", "1", 1),
        POTASSIUM_NITRATE,
        NITROGEN,
        new Volume("flask", millilitres, 0.1));
  }

  /** Printed to 0.1 mg/L, and both uncertainties to one figure. */
  @Test
  void aCadmiumStockHasTheGuidesConcentrationAndUncertainty() {
    Published table = Published.table("cadmium-stock");
    double flaskUncertainty =
        Math.hypot(
            Math.hypot(Tolerance.TRIANGULAR.standardUncertainty(0.1), 0.02),
            Tolerance.RECTANGULAR.standardUncertainty(0.084));
    Budget stock =
        new Stock(
                Quantity.of(
                    "cadmium",
                    "g",
                    table.numbers("milligrams")[0] / 1000,
                    table.numbers("uMilligrams")[0] / 1000),
                Quantity.of("purity", "1", table.numbers("purity")[0], table.numbers("uPurity")[0]),
                112.414,
                112.414,
                new Volume(
                    "flask", table.numbers("millilitres")[0], table.numbers("uMillilitres")[0]))
            .milligramsPerLitre();

    assertThat(flaskUncertainty).isCloseTo(table.numbers("uMillilitres")[0], within(0.005));
    assertThat(stock.value()).isCloseTo(table.numbers("milligramsPerLitre")[0], within(0.05));
    assertThat(stock.standardUncertainty())
        .isCloseTo(table.numbers("uMilligramsPerLitre")[0], within(0.05));
  }

  @Test
  void potassiumNitrateGivesTheLaboratoriesStocks() {
    Published table = Published.table("nitrate-stocks");
    for (int i = 0; i < table.rows().size(); i++) {
      assertThat(
              potassiumNitrate(table.numbers("grams")[i], table.numbers("millilitres")[i])
                  .milligramsPerLitre()
                  .value())
          .isCloseTo(table.numbers("milligramsPerLitre")[i], within(table.numbers("digits")[i]));
    }
  }

  @Test
  void aStockInTwoStepsBecomesTheTenMilligramStandard() {
    Budget stock = potassiumNitrate(0.7218, 100).milligramsPerLitre();
    Budget standard =
        Dilution.of(new DilutionStep(PIPETTE, FLASK), new DilutionStep(PIPETTE, FLASK))
            .after(Quantity.of("stock", "mg/L", stock.value(), stock.standardUncertainty()));

    // 0.7218 g in 100 mL is 1000.00 mg/L within the fifth digit of the mass.
    assertThat(standard.value()).isCloseTo(10, withinPercentage(0.01));
    assertThat(standard.unit()).isEqualTo("mg/L");
  }

  @Test
  void theFactorsRelativeVarianceIsTheSumOfTheVolumes() {
    Budget factor =
        Dilution.of(new DilutionStep(PIPETTE, FLASK), new DilutionStep(PIPETTE, FLASK)).factor();
    double pipette = 0.02 / Math.sqrt(6) / 10;
    double flask = 0.1 / Math.sqrt(3) / 100;

    assertThat(factor.value()).isCloseTo(100, within(1e-12));
    assertThat(factor.standardUncertainty() / factor.value())
        .isCloseTo(Math.sqrt(2 * pipette * pipette + 2 * flask * flask), withinPercentage(0.001));
  }

  @Test
  void aPipetteUsedTwiceCountsAsTwoIndependentOnes() {
    Budget factor =
        Dilution.of(new DilutionStep(PIPETTE, FLASK), new DilutionStep(PIPETTE, FLASK)).factor();

    assertThat(factor.contributions())
        .extracting(part -> part.source().name())
        .containsExactly(
            "step 1: pipette 10 mL",
            "step 1: flask 100 mL",
            "step 2: pipette 10 mL",
            "step 2: flask 100 mL");
  }

  /** Of 100 000 trials the standard deviation is known to 0.22 %. */
  @Test
  void thePropagationOfDistributionsAgrees() {
    Dilution dilution =
        Dilution.of(
            new DilutionStep(new Volume("pipette", 1, 0.01), new Volume("flask", 50, 0.05)),
            new DilutionStep(new Volume("pipette", 5, 0.02), new Volume("flask", 25, 0.03)));
    Budget before = dilution.before(Quantity.of("read", "mg/L", 3.2, 0.06));
    MonteCarlo drawn =
        MonteCarlo.of(
            before.contributions().stream().map(Contribution::source).toList(),
            x -> x[0] * x[2] / x[1] * x[4] / x[3],
            100_000,
            20260601);

    assertThat(before.value()).isCloseTo(3.2 * 250, within(1e-9));
    assertThat(before.standardUncertainty() / drawn.standardDeviation()).isCloseTo(1, within(0.01));
  }

  @Test
  void withoutAStepNothingIsDiluted() {
    Budget factor = new Dilution(List.of()).factor();

    assertThat(factor.value()).isEqualTo(1);
    assertThat(factor.standardUncertainty()).isZero();
  }

  @Test
  void whatDoesNotFitIntoAFlaskIsRefused() {
    assertThatThrownBy(() -> new DilutionStep(FLASK, PIPETTE))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("100.0 mL are made up to a larger volume, not to 10.0 mL");
    assertThatThrownBy(() -> new Volume("pipette", 0, 0.01))
        .hasMessage("pipette is above zero, not 0.0");
  }

  @Test
  void aStockOfMoreThanPureSaltIsRefused() {
    Quantity mass = Quantity.exactly("salt", "g", 1);
    Quantity impossible = Quantity.exactly("purity", "1", 1.01);
    Quantity pure = Quantity.exactly("purity", "1", 1);
    assertThatThrownBy(() -> new Stock(mass, impossible, 101.1, 14.007, FLASK))
        .hasMessage("a purity is at most 1, not 1.01");
    assertThatThrownBy(() -> new Stock(mass, pure, 101.1, 120, FLASK))
        .hasMessageStartingWith("a mole of salt holds");
    assertThatThrownBy(
            () -> new Stock(Quantity.exactly("salt", "mg", 1), pure, 101.1, 14.007, FLASK))
        .hasMessage("salt is given in g, not in mg");
  }
}
