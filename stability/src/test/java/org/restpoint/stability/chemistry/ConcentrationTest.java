package org.restpoint.stability.chemistry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;
import static org.restpoint.stability.chemistry.ConcentrationUnit.MICROGRAMS_PER_LITRE;
import static org.restpoint.stability.chemistry.ConcentrationUnit.MICROMOLES_PER_LITRE;
import static org.restpoint.stability.chemistry.ConcentrationUnit.MILLIGRAMS_PER_LITRE;
import static org.restpoint.stability.chemistry.ConcentrationUnit.MILLIMOLES_PER_LITRE;
import static org.restpoint.stability.chemistry.ConcentrationUnit.MOLES_PER_LITRE;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class ConcentrationTest {

  private static final Analyte NITRATE = Analyte.named("nitrate").orElseThrow();
  private static final Analyte CALCIUM = Analyte.named("calcium").orElseThrow();

  /** Twice the rounding of a division and a multiplication. */
  private static final double ROUNDING_PERCENT = 1e-13;

  @Test
  void tenAsNitrogenIs44AsTheIon() {
    double moles = new Concentration(10, MILLIGRAMS_PER_LITRE, Basis.AS_N).molesPerLitre(NITRATE);
    Concentration asIon =
        Concentration.ofMolesPerLitre(moles, NITRATE, MILLIGRAMS_PER_LITRE, Basis.AS_ION);
    // 10 · 4.4266, to the decimals of the factor.
    assertThat(asIon.value()).isCloseTo(44.266, within(0.0005));
  }

  @Test
  void aStockOf0Point7218GramsOfPotassiumNitrateIsOneHundredAsNitrogen() {
    // Clemson University, Agricultural Service Laboratory, Nitrate-Nitrogen ISE: 0.7218 g of KNO3
    // in 100 mL is 1000 mg/L NO3-N; a tenth of that here. The mass is printed to 1 in 14 000, so
    // the concentration holds to 0.007 mg/L.
    double potassium = Analyte.named("potassium").orElseThrow().gramsPerMole();
    double moles = 0.7218 / (potassium + NITRATE.gramsPerMole());
    Concentration stock =
        Concentration.ofMolesPerLitre(moles, NITRATE, MILLIGRAMS_PER_LITRE, Basis.AS_N);
    assertThat(stock.value()).isCloseTo(100, within(0.007));
  }

  @Test
  void aMoleIsAMoleOnEitherBasis() {
    for (Basis basis : Basis.values()) {
      assertThat(new Concentration(2, MILLIMOLES_PER_LITRE, basis).molesPerLitre(NITRATE))
          .isEqualTo(0.002);
      assertThat(new Concentration(2, MICROMOLES_PER_LITRE, basis).molesPerLitre(NITRATE))
          .isCloseTo(2e-6, withinPercentage(ROUNDING_PERCENT));
      assertThat(new Concentration(2, MOLES_PER_LITRE, basis).molesPerLitre(NITRATE)).isEqualTo(2);
    }
  }

  @Test
  void aMilligramIsAThousandMicrograms() {
    double milli = new Concentration(7, MILLIGRAMS_PER_LITRE, Basis.AS_N).molesPerLitre(NITRATE);
    double micro = new Concentration(7000, MICROGRAMS_PER_LITRE, Basis.AS_N).molesPerLitre(NITRATE);
    assertThat(micro).isCloseTo(milli, withinPercentage(ROUNDING_PERCENT));
  }

  @Property
  void anyUnitAndBasisLeadsThereAndBack(
      @ForAll ConcentrationUnit unit,
      @ForAll Basis basis,
      @ForAll @DoubleRange(min = -9, max = 9) double exponent) {
    double value = Math.pow(10, exponent);
    Concentration given = new Concentration(value, unit, basis);
    Concentration back =
        Concentration.ofMolesPerLitre(given.molesPerLitre(NITRATE), NITRATE, unit, basis);
    assertThat(back.value()).isCloseTo(value, withinPercentage(ROUNDING_PERCENT));
    assertThat(back.unit()).isEqualTo(unit);
    assertThat(back.basis()).isEqualTo(basis);
  }

  @Test
  void calciumAsNitrogenIsRefused() {
    Concentration given = new Concentration(1, MILLIGRAMS_PER_LITRE, Basis.AS_N);
    assertThatThrownBy(() -> given.molesPerLitre(CALCIUM))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("calcium cannot be given as-N");
  }

  @Test
  void aNegativeOrInfiniteConcentrationIsRefused() {
    for (double value : new double[] {-1e-9, Double.NaN, Double.POSITIVE_INFINITY}) {
      assertThatThrownBy(() -> new Concentration(value, MOLES_PER_LITRE, Basis.AS_ION))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessage("a concentration is 0 or above, not " + value);
    }
    assertThat(new Concentration(0, MOLES_PER_LITRE, Basis.AS_ION).molesPerLitre(NITRATE)).isZero();
  }

  @Test
  void unitsAndBasesAreFoundByTheirCodes() {
    for (ConcentrationUnit unit : ConcentrationUnit.values()) {
      assertThat(ConcentrationUnit.ofCode(unit.code())).contains(unit);
    }
    for (Basis basis : Basis.values()) {
      assertThat(Basis.ofCode(basis.code())).contains(basis);
    }
    assertThat(ConcentrationUnit.ofCode("ppm")).isEmpty();
    assertThat(Basis.ofCode("as-n")).isEmpty();
  }
}
