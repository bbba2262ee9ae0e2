package org.restpoint.stability.calibration;

import java.util.ArrayList;
import java.util.List;
import org.restpoint.stability.fit.Covariance;

/**
 * An electrode between two readings of a standard, on one slope.
 *
 * <p>{@code E0(w) = (1 − w)·E0a + w·E0b}, {@code w = (t − ta)/(tb − ta)}: E0a and E0b are the
 * offsets in mV that the standard gave at the times ta and tb, w is how far of the time between
 * them has gone by, 0 to 1.
 *
 * <p>{@code u(E0) = (1 − w)·u(E0a) + w·u(E0b)} where both have the same cause (one standard
 * solution, one slope), which is taken for all of it: with the potentials' own noise it is a little
 * too wide. Added to it is what is not known of the way between: {@code u_way = |E0b − E0a|·√(w·(1
 * − w)/3)}, nothing at either standard and |E0b − E0a|/√12 in the middle, which is the rectangular
 * distribution between both offsets.
 *
 * <p>Edge results: w = 0 and w = 1 give the curves themselves. Curves on another slope, low end,
 * reference temperature or compensation are refused with an {@link IllegalArgumentException}; see
 * {@link #isPossible}.
 *
 * <p>Method: linear interpolation; JCGM 100:2008, 4.3.7 (rectangular distribution), 5.2.2 note 1
 * (correlated quantities). That the way has its widest doubt in the middle, and how it falls off,
 * is our own choice.
 *
 * @param before the curve after the first reading of the standard
 * @param after the curve after the second
 * @param share w
 */
public record Bracket(ResponseCurve before, ResponseCurve after, double share) {

  public Bracket {
    if (!(share >= 0 && share <= 1)) {
      throw new IllegalArgumentException("a share is 0 to 1, not " + share);
    }
    if (!isPossible(before, after)) {
      throw new IllegalArgumentException("two curves of one bracket differ in their offset alone");
    }
  }

  /** Whether two curves differ in nothing but their offset and its uncertainty. */
  public static boolean isPossible(ResponseCurve before, ResponseCurve after) {
    return before.slopeMillivoltsPerDecade() == after.slopeMillivoltsPerDecade()
        && before.lowEndMolesPerLitre() == after.lowEndMolesPerLitre()
        && before.referenceCelsius() == after.referenceCelsius()
        && before.compensation().equals(after.compensation());
  }

  /** The curve at that time. */
  public ResponseCurve curve() {
    double step = after.offsetMillivolts() - before.offsetMillivolts();
    return new ResponseCurve(
        before.offsetMillivolts() + share * step,
        before.slopeMillivoltsPerDecade(),
        before.lowEndMolesPerLitre(),
        before.referenceCelsius(),
        before.compensation(),
        between(before.fromLine(), after.fromLine(), step * step * share * (1 - share) / 3),
        between(before.fromStandards(), after.fromStandards(), 0));
  }

  /** Standard uncertainties interpolate, and covariances with the offset do. */
  private Covariance between(Covariance a, Covariance b, double ofTheWay) {
    List<Double> entries = new ArrayList<>();
    for (int row = 0; row < a.size(); row++) {
      for (int column = 0; column < a.size(); column++) {
        entries.add((1 - share) * a.of(row, column) + share * b.of(row, column));
      }
    }
    double offset = (1 - share) * a.standardUncertainty(0) + share * b.standardUncertainty(0);
    entries.set(0, offset * offset + ofTheWay);
    return new Covariance(a.size(), entries);
  }
}
