package org.restpoint.stability.addition;

import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.restpoint.stability.uncertainty.Budget;
import org.restpoint.stability.uncertainty.Source.Quantity;

/**
 * A potential before and after something was added, both at rest and at the same temperature.
 *
 * <p>{@code R = 10^((E₂ − E₁)/S)} is the ratio of the ion's concentrations, while ionic strength
 * and complexation stay as they are. An offset common to both potentials cancels: their
 * uncertainties are those that each has for itself (noise, rest). All three in one unit of
 * potential; the ratio does not depend on which.
 *
 * <p>Edge results: a slope of 0 is refused with an {@link IllegalArgumentException}.
 *
 * @param beforeMillivolts E₁, mV
 * @param afterMillivolts E₂, mV
 * @param slopeMillivoltsPerDecade S, mV/decade, negative for anions, not 0
 */
public record PotentialStep(
    Quantity beforeMillivolts, Quantity afterMillivolts, Quantity slopeMillivoltsPerDecade) {

  public PotentialStep {
    if (slopeMillivoltsPerDecade.value() == 0) {
      throw new IllegalArgumentException("a slope is a number other than 0");
    }
  }

  /** A step of these numbers: mV, mV and mV/decade, each with its standard uncertainty. */
  public static PotentialStep of(
      double before,
      double standardUncertaintyBefore,
      double after,
      double standardUncertaintyAfter,
      double slope,
      double standardUncertaintySlope) {
    return new PotentialStep(
        Quantity.of("potential before", "mV", before, standardUncertaintyBefore),
        Quantity.of("potential after", "mV", after, standardUncertaintyAfter),
        Quantity.of("slope", "mV", slope, standardUncertaintySlope));
  }

  /** E₂ − E₁, mV. */
  public double changeMillivolts() {
    return afterMillivolts.value() - beforeMillivolts.value();
  }

  /** R, above zero. */
  public double ratio() {
    return ratio(
        beforeMillivolts.value(), afterMillivolts.value(), slopeMillivoltsPerDecade.value());
  }

  static double ratio(double before, double after, double slope) {
    return Math.pow(10, (after - before) / slope);
  }

  /** u(ln R) from the two potentials alone: ln 10·u(ΔE)/|S|. */
  double relativeUncertaintyOfRatio() {
    return Math.log(10)
        * changeUncertaintyMillivolts()
        / Math.abs(slopeMillivoltsPerDecade.value());
  }

  private double changeUncertaintyMillivolts() {
    return Math.hypot(
        beforeMillivolts.standardUncertainty(), afterMillivolts.standardUncertainty());
  }

  /**
   * The budget of a concentration in the sample, in the unit of what was added.
   *
   * @param vessel the sample before
   * @param added volume of what was added
   * @param strength its concentration
   * @param balance how the concentration follows
   */
  Budget budget(Vessel vessel, Quantity added, Quantity strength, Balance balance) {
    List<Quantity> sources =
        Stream.of(vessel.sources(), Stream.of(added, strength), sources())
            .flatMap(part -> part)
            .toList();
    int first = vessel.size();
    return Budget.of(
        "concentration",
        strength.unit(),
        sources,
        x ->
            balance.concentration(
                x[0],
                vessel.total(x),
                x[first],
                x[first + 1],
                ratio(x[first + 2], x[first + 3], x[first + 4])));
  }

  /** What the ion's balance makes of a change of its concentration. */
  @FunctionalInterface
  interface Balance {

    /**
     * The concentration in the sample.
     *
     * @param sample V_x
     * @param before V₀
     * @param added volume added
     * @param strength concentration of what was added
     * @param ratio R
     */
    double concentration(double sample, double before, double added, double strength, double ratio);
  }

  /** E₁, E₂, S. */
  Stream<Quantity> sources() {
    return Stream.of(beforeMillivolts, afterMillivolts, slopeMillivoltsPerDecade);
  }

  /** What was seen, for a person. */
  String seen() {
    return String.format(
        Locale.ROOT,
        "the potential changed by %.2f mV (U = %.2f mV, k = 2) at a slope of %.2f mV/decade",
        changeMillivolts(),
        2 * changeUncertaintyMillivolts(),
        slopeMillivoltsPerDecade.value());
  }
}
