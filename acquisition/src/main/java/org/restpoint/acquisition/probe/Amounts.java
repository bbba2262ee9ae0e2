package org.restpoint.acquisition.probe;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.restpoint.acquisition.event.Result.Amount;
import org.restpoint.stability.calibration.ReadBack;
import org.restpoint.stability.calibration.ResponseCurve;
import org.restpoint.stability.calibration.RestedSample;
import org.restpoint.stability.uncertainty.Budget;
import org.restpoint.stability.uncertainty.BudgetLine;

/**
 * Turns what was read back into an amount with its uncertainty, and says where that ends: below the
 * detection limit of the curve or the lower end of the reportable range it is {@code <} that, above
 * the upper end {@code >} that.
 *
 * @param scale what results are counted in
 * @param range the lowest and the highest value that is told as a number, where the station file
 *     sets them
 */
public record Amounts(Scale scale, Optional<Range> range) {

  /** Coverage factor of every published uncertainty (JCGM 100:2008, 6.2.1). */
  private static final int COVERAGE = 2;

  /**
   * The values that are told as a number.
   *
   * @param low the lowest
   * @param high the highest
   */
  public record Range(double low, double high) {}

  /**
   * An amount with its budget.
   *
   * @param amount the amount
   * @param budget where its uncertainty comes from
   */
  record Told(Amount amount, List<BudgetLine> budget) {}

  /** The amount of a sample; empty where nothing is left of the ion and no limit says more. */
  Optional<Told> of(ResponseCurve curve, RestedSample sample) {
    ReadBack read = curve.read(sample);
    OptionalDouble lowest = lowest(curve, sample);
    if (lowest.isPresent() && isBelow(read, lowest.getAsDouble())) {
      return Optional.of(at(lowest.getAsDouble(), "<", curve, sample));
    }
    Optional<Double> above = range.map(Range::high).filter(limit -> isAbove(read, limit));
    if (above.isPresent()) {
      return Optional.of(at(above.get(), ">", curve, sample));
    }
    return isNothing(read)
        ? Optional.empty()
        : Optional.of(told(scale.of(read.molesPerLitre()), "=", budget(read)));
  }

  private static boolean isNothing(ReadBack read) {
    return !(read.molesPerLitre() > 0);
  }

  /** The value below which no number is told, if there is one. */
  OptionalDouble lowest(ResponseCurve curve, RestedSample sample) {
    double limit = curve.lowEndMolesPerLitre() / sample.activityCoefficient();
    double low = range.map(Range::low).orElse(0.0);
    if (limit == 0) {
      return range.isPresent() ? OptionalDouble.of(low) : OptionalDouble.empty();
    }
    return OptionalDouble.of(Math.max(scale.of(limit), low));
  }

  private boolean isBelow(ReadBack read, double limit) {
    return isNothing(read) ? !isPh() : scale.of(read.molesPerLitre()) < limit;
  }

  /** Where nothing is left of hydrogen its pH has no upper end. */
  private boolean isAbove(ReadBack read, double limit) {
    return isNothing(read) ? isPh() : scale.of(read.molesPerLitre()) > limit;
  }

  private boolean isPh() {
    return scale instanceof Scale.OfPh;
  }

  /** A limit, with the uncertainty that a sample at the limit would have. */
  private Told at(double limit, String relation, ResponseCurve curve, RestedSample sample) {
    double activity =
        scale.molesPerLitre(limit) * sample.activityCoefficient()
            + sample.backgroundMolesPerLitre();
    RestedSample there = sample.withMillivolts(curve.millivoltsAt(activity, sample.celsius()));
    return told(limit, relation, budget(curve.read(there)));
  }

  private Budget budget(ReadBack read) {
    return read.budget(scale.measurand(), scale.unit(), scale::of);
  }

  private Told told(double value, String relation, Budget budget) {
    return new Told(
        new Amount(
            value,
            scale.unit(),
            scale.basis(),
            budget.expandedUncertainty(COVERAGE),
            COVERAGE,
            relation),
        budget.lines().stream().filter(line -> line.contribution() > 0).toList());
  }
}
