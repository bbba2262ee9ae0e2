package org.restpoint.stability.interference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import org.restpoint.stability.interference.SeparateSolution.Solution;

/** How interference behaves for any ions of one sign. */
class InterferencePropertyTest {

  /** Rounding of some powers and a sum, %. */
  private static final double ROUNDING_PERCENT = 1e-9;

  private static Arbitrary<Double> decades(double lowest, double highest) {
    return Arbitraries.doubles().between(lowest, highest).map(log10 -> Math.pow(10, log10));
  }

  @Provide
  Arbitrary<Double> activities() {
    return decades(-6, 0);
  }

  @Provide
  Arbitrary<Interferent> cations() {
    return Combinators.combine(
            Arbitraries.of(1, 2),
            decades(-6, 2),
            decades(-6, 0),
            Arbitraries.doubles().between(0, 0.5),
            Arbitraries.doubles().between(0, 0.5))
        .as(
            (charge, selectivity, activity, ofActivity, ofSelectivity) ->
                new Interferent("any", charge, selectivity, activity, ofActivity, ofSelectivity));
  }

  @Provide
  Arbitrary<List<Interferent>> samples() {
    return cations().list().ofMaxSize(5);
  }

  private static Interferent negated(Interferent ion) {
    return new Interferent(
        ion.name(),
        -ion.charge(),
        ion.selectivity(),
        ion.activityMolesPerLitre(),
        ion.relativeUncertaintyOfActivity(),
        ion.relativeUncertaintyOfSelectivity());
  }

  @Property
  void theCorrectedApparentActivityIsTheTrueOne(
      @ForAll("samples") List<Interferent> sample, @ForAll("activities") double activity) {
    Interference interference = new Interference(Background.of(1, sample));
    double apparent = interference.apparentMolesPerLitre(activity);
    Correction correction = interference.corrected(apparent, 0);
    // The difference keeps what the sum's last digit tells.
    double rounding = 4 * Math.ulp(apparent);
    // Nothing left, where the true activity is lost in that digit, is as good as 0.
    double left =
        correction instanceof Correction.Corrected corrected ? corrected.molesPerLitre() : 0;
    assertThat(left).isCloseTo(activity, within(rounding));
  }

  @Property
  void theOrderOfTheIonsDoesNotMatter(
      @ForAll("samples") List<Interferent> sample, @ForAll Random random) {
    Background one = Background.of(2, sample);
    List<Interferent> shuffled = new ArrayList<>(sample);
    Collections.shuffle(shuffled, random);
    Background other = Background.of(2, shuffled);
    assertThat(other.molesPerLitre())
        .isCloseTo(one.molesPerLitre(), withinPercentage(ROUNDING_PERCENT));
    assertThat(other.standardUncertainty())
        .isCloseTo(one.standardUncertainty(), withinPercentage(ROUNDING_PERCENT));
  }

  @Property
  void aGreaterCoefficientIsAsGoodAsAGreaterActivity(
      @ForAll("cations") Interferent ion, @ForAll @DoubleRange(min = 0.1, max = 10) double factor) {
    int charge = ion.charge();
    Interferent selected =
        Interferent.exactly("any", charge, factor * ion.selectivity(), ion.activityMolesPerLitre());
    Interferent present =
        Interferent.exactly("any", charge, ion.selectivity(), factor * ion.activityMolesPerLitre());
    assertThat(selected.madeUpMolesPerLitre(charge))
        .isCloseTo(present.madeUpMolesPerLitre(charge), withinPercentage(ROUNDING_PERCENT));
    // Beside an ion of the other charge it goes with the power z_i/z_j of the activity.
    int primary = 3 - charge;
    assertThat(present.madeUpMolesPerLitre(primary))
        .isCloseTo(
            ion.madeUpMolesPerLitre(primary) * Math.pow(factor, (double) primary / charge),
            withinPercentage(ROUNDING_PERCENT));
  }

  @Property
  void theSignOfTheChargesChangesNothingButTheSignOfTheShift(
      @ForAll("samples") List<Interferent> sample, @ForAll("activities") double activity) {
    Interference cations = new Interference(Background.of(1, sample));
    Interference anions =
        new Interference(
            Background.of(-1, sample.stream().map(InterferencePropertyTest::negated).toList()));
    assertThat(anions.biasMolesPerLitre()).isEqualTo(cations.biasMolesPerLitre());
    assertThat(anions.background().standardUncertainty())
        .isEqualTo(cations.background().standardUncertainty());
    assertThat(anions.shiftMillivolts(activity, -59.16))
        .isEqualTo(-cations.shiftMillivolts(activity, 59.16));
  }

  @Property
  void theShiftIsWhatTheElectrodeShows(
      @ForAll("samples") List<Interferent> sample,
      @ForAll("activities") double activity,
      @ForAll @DoubleRange(min = 50, max = 62) double slope) {
    Interference interference = new Interference(Background.of(1, sample));
    double with = slope * Math.log10(interference.apparentMolesPerLitre(activity));
    double without = slope * Math.log10(activity);
    assertThat(interference.shiftMillivolts(activity, slope))
        .isCloseTo(with - without, within(1e-9));
  }

  /** An electrode that obeys the equation gives its coefficient back, by both methods. */
  @Property
  void theCoefficientIsFoundFromThePotentialsItMakes(
      @ForAll("cations") Interferent ion,
      @ForAll("activities") double activity,
      @ForAll @DoubleRange(min = 50, max = 62) double slope) {
    double ofPrimary = 100 + slope * Math.log10(activity);
    double ofInterferent = 100 + slope * Math.log10(ion.madeUpMolesPerLitre(1));
    SeparateSolution separate =
        new SeparateSolution(
            new Solution(1, activity, 0, ofPrimary, 0),
            new Solution(ion.charge(), ion.activityMolesPerLitre(), 0, ofInterferent, 0),
            slope,
            0);
    assertThat(separate.selectivity().value())
        .isCloseTo(ion.selectivity(), withinPercentage(ROUNDING_PERCENT));
    double crossing = Background.of(1, List.of(ion)).detectionLimitMolesPerLitre();
    FixedInterference fixed =
        new FixedInterference(
            new FixedInterference.Held(1, crossing, 0),
            new FixedInterference.Held(ion.charge(), ion.activityMolesPerLitre(), 0));
    assertThat(fixed.selectivity().value())
        .isCloseTo(ion.selectivity(), withinPercentage(ROUNDING_PERCENT));
  }
}
