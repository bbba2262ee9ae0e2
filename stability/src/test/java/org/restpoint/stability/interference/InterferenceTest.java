package org.restpoint.stability.interference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.restpoint.stability.Published;
import org.restpoint.stability.chemistry.Analyte;
import org.restpoint.stability.electrode.Nernst;

class InterferenceTest {

  private static final double GRAMS_PER_MOLE_SULFATE = 96.06;

  private static Interference of(int charge, double selectivity, double activity) {
    return new Interference(
        Background.of(
            charge, List.of(Interferent.exactly("other", charge, selectivity, activity))));
  }

  @Test
  void textbookExamplesAreFoundAgain() {
    Published table = Published.table("interference-worked-examples");
    double[] charges = table.numbers("charge");
    double[] activities = table.numbers("activity");
    double[] selectivities = table.numbers("selectivity");
    double[] interfering = table.numbers("interferingActivity");
    double[] slopes = table.numbers("slope");
    double[] published = table.numbers("published");
    double[] tolerances = table.numbers("tolerance");
    assertThat(charges).hasSize(3);
    for (int i = 0; i < charges.length; i++) {
      Interference interference = of((int) charges[i], selectivities[i], interfering[i]);
      double found =
          table.texts("quantity").get(i).equals("percent")
              ? interference.biasPercent(activities[i])
              : interference.shiftMillivolts(activities[i], slopes[i]);
      assertThat(found)
          .as("example %s", table.texts("example").get(i))
          .isCloseTo(published[i], within(tolerances[i]));
    }
  }

  /** Worked out independently of the code: 1e-4 mol/L nitrate beside 1e-2 mol/L chloride. */
  @Test
  void chlorideMakesHalfAsMuchNitrateAgain() {
    Interference interference = of(-1, 0.005, 1e-2);
    assertThat(interference.apparentMolesPerLitre(1e-4)).isCloseTo(1.5e-4, within(1e-18));
    assertThat(interference.biasMolesPerLitre()).isCloseTo(5e-5, within(1e-18));
    assertThat(interference.biasPercent(1e-4)).isCloseTo(50, within(1e-10));
    // Half of the last digit worked out.
    assertThat(interference.shiftMillivolts(1e-4, Nernst.idealSlopeMillivoltsPerDecade(-1, 25)))
        .isCloseTo(-10.417, within(0.0005));
  }

  /** Direction and size only: no one coefficient fits the measurements. */
  @Test
  void measuredBiasOfChlorideOnNitrateLiesBetweenThatOfItsLowAndHighCoefficients() {
    Published table = Published.table("nitrate-interference");
    double nitrogen = 14.007;
    double chloride = Analyte.named("chloride").orElseThrow().gramsPerMole();
    int met = 0;
    for (int i = 0; i < table.rows().size(); i++) {
      double milligrams = table.numbers("milligramsPerLitre")[i];
      if (table.texts("interferent").get(i).equals("chloride") && milligrams >= 250) {
        double activity = milligrams / 1000 / chloride;
        for (String added : List.of("5", "10")) {
          double trueMoles = Double.parseDouble(added) / 1000 / nitrogen;
          double found = table.numbers(added)[i] / 1000 / nitrogen;
          // Nitrate membranes have coefficients of 0.004 to 0.04 for chloride (from memory).
          assertThat(found)
              .as("%s mg/L as N beside %s mg/L chloride", added, milligrams)
              .isBetween(
                  of(-1, 0.004, activity).apparentMolesPerLitre(trueMoles),
                  of(-1, 0.04, activity).apparentMolesPerLitre(trueMoles));
          met++;
        }
      }
    }
    assertThat(met).isEqualTo(6);
  }

  /** 6e-4 (mol/L)^½: the coefficient that nitrate membranes have for sulfate (from memory). */
  @Test
  void sulfateMakesUpNitrateByTheRootOfItsActivityAsMeasured() {
    Published table = Published.table("nitrate-interference");
    double nitrogen = 14.007;
    int met = 0;
    for (int i = 0; i < table.rows().size(); i++) {
      if (table.texts("interferent").get(i).equals("sulfate")) {
        double milligrams = table.numbers("milligramsPerLitre")[i];
        double activity = milligrams / 1000 / GRAMS_PER_MOLE_SULFATE;
        Interference interference =
            new Interference(
                Background.of(-1, List.of(Interferent.exactly("sulfate", -2, 6e-4, activity))));
        // Measured without nitrate, to 0.1 mg/L; a power of 1 would be off by a factor of 5.
        assertThat(1000 * nitrogen * interference.apparentMolesPerLitre(0))
            .as("%s mg/L sulfate", milligrams)
            .isCloseTo(table.numbers("0")[i], withinPercentage(30));
        met++;
      }
    }
    assertThat(met).isEqualTo(4);
  }

  @Test
  void whatTheOthersMakeUpIsTakenOffWithItsDoubt() {
    Interference interference =
        new Interference(
            Background.of(-1, List.of(new Interferent("chloride", -1, 0.005, 1e-2, 0, 0.4))));
    Correction correction = interference.corrected(1.5e-4, 1.5e-5);
    assertThat(correction)
        .isInstanceOfSatisfying(
            Correction.Corrected.class,
            corrected -> {
              assertThat(corrected.molesPerLitre()).isCloseTo(1e-4, within(1e-18));
              // 40 % of 5e-5 are 2e-5; with 1.5e-5 they make 2.5e-5.
              assertThat(corrected.standardUncertainty()).isCloseTo(2.5e-5, within(1e-18));
              assertThat(corrected.relativeStandardUncertainty()).isCloseTo(0.25, within(1e-12));
            });
  }

  @Test
  void nothingIsLeftWhereTheOthersExplainTheWholeReading() {
    Interference interference = of(-1, 0.005, 1e-2);
    double background = interference.background().molesPerLitre();
    for (double apparent : new double[] {0, 1e-5, background}) {
      assertThat(interference.corrected(apparent, 1e-6))
          .isEqualTo(new Correction.NothingLeft(apparent, interference.background()));
    }
    assertThat(interference.corrected(Math.nextUp(background), 1e-6))
        .isInstanceOf(Correction.Corrected.class);
  }

  @Test
  void withoutOthersNothingChanges() {
    Interference interference = new Interference(Background.of(2, List.of()));
    assertThat(interference.biasPercent(1e-3)).isZero();
    assertThat(interference.shiftMillivolts(1e-3, 29.6)).isZero();
    assertThat(interference.corrected(1e-3, 1e-5)).isEqualTo(new Correction.Corrected(1e-3, 1e-5));
  }

  @Test
  void nothingIsNotSomethingLeft() {
    for (double moles : new double[] {0, Double.NaN}) {
      assertThatThrownBy(() -> new Correction.Corrected(moles, 1e-6))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessage("what is left is above 0 mol/L, ± 0 or above, not " + moles + " ± 1.0E-6");
    }
  }

  @Test
  void thereIsNoRelativeBiasOfNothing() {
    Interference interference = of(-1, 0.005, 1e-2);
    assertThat(interference.apparentMolesPerLitre(0)).isEqualTo(interference.biasMolesPerLitre());
    assertThatThrownBy(() -> interference.biasPercent(0))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("there is no bias relative to a true activity of 0 mol/L");
    assertThatThrownBy(() -> interference.shiftMillivolts(0, -59))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("there is no bias relative to a true activity of 0 mol/L");
  }

  @Test
  void whatIsNotAnActivityOrASlopeIsRefused() {
    Interference interference = of(-1, 0.005, 1e-2);
    for (double value : new double[] {-1e-9, Double.NaN, Double.POSITIVE_INFINITY}) {
      assertThatThrownBy(() -> interference.apparentMolesPerLitre(value))
          .hasMessage("the true activity is 0 mol/L or above, not " + value);
      assertThatThrownBy(() -> interference.corrected(value, 0))
          .hasMessage("the apparent activity is 0 mol/L or above, not " + value);
      assertThatThrownBy(() -> interference.corrected(1, value))
          .hasMessage("the uncertainty of the apparent activity is 0 mol/L or above, not " + value);
    }
    for (double slope : new double[] {0, Double.NaN, Double.NEGATIVE_INFINITY}) {
      assertThatThrownBy(() -> interference.shiftMillivolts(1e-3, slope))
          .hasMessage("a slope is a finite number of mV per decade and not 0, not " + slope);
    }
  }
}
