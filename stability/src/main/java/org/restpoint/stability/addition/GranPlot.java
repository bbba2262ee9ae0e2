package org.restpoint.stability.addition;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import org.restpoint.stability.addition.AdditionOutcome.Answer;
import org.restpoint.stability.addition.AdditionOutcome.NoAnswer;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.fit.WeightedLine;
import org.restpoint.stability.uncertainty.Budget;
import org.restpoint.stability.uncertainty.Source;
import org.restpoint.stability.uncertainty.Source.Joint;
import org.restpoint.stability.uncertainty.Source.Quantity;

/**
 * Multiple additions by Gran's plot: standard is added to the sample again and again.
 *
 * <p>{@code y = (V₀+V)·10^((E−E_r)/S)} is proportional to the amount of the ion, {@code c·V_x +
 * c_s·V}, and so a straight line {@code a + b·V}: {@code c = a·c_s/(b·V_x)}, the distance at which
 * the line meets y = 0. E_r is one of the potentials; it keeps the numbers small and cancels. c and
 * c_s in one unit of concentration, volumes in mL, {@code V₀ = V_x + V_adj} ({@link Vessel}), V all
 * that was added, S in mV/decade.
 *
 * <p>The line is fitted with the weights {@code 1/u²(y)}, {@code u(y) = y·ln 10·u(E)/|S|}. Every
 * potential, every volume, S and c_s is propagated through the whole fit; the volumes share the
 * delivery's scale error. Where the points scatter more than u(E) says (below), its part grows by
 * {@code χ²/(n−2)}. All potentials have to be on the electrode's linear part: a first one below it
 * has a small y and so a large weight, and would draw the line.
 *
 * <p>A blank is what the same procedure finds in water in place of the sample; it is taken off.
 *
 * <p>Edge results, named:
 *
 * <ul>
 *   <li>{@code gran-too-few}: fewer than three different volumes; no answer;
 *   <li>{@code gran-apart}: potentials hundreds of decades apart, whose y no number holds; no
 *       answer;
 *   <li>{@code gran-wrong-way}, {@code gran-no-change}: b below zero, or within twice its
 *       uncertainty of it; no answer;
 *   <li>{@code below-zero}: c below zero by more than twice its uncertainty; no answer;
 *   <li>{@code near-zero}: c within that of 0, told as it is;
 *   <li>{@code addition-small}: all additions together did not double the concentration;
 *   <li>{@code gran-misfit}: χ² above the 95 % quantile of χ²(n−2): the plot is bent, or the
 *       potentials were not at rest.
 * </ul>
 *
 * <p>Method: weighted least squares, law of propagation ({@link Budget}) by differences through the
 * fit. Reference: G. Gran, Analyst 77 (1952) 661, doi 10.1039/AN9527700661; A. Liberti, M. Mascini,
 * Anal. Chem. 41 (1969) 676 (known additions to ion-selective electrodes); JCGM 100:2008, 5.2.2.
 *
 * @param sample the sample in its vessel
 * @param standardConcentration c_s, above zero, in the unit the result is wanted in
 * @param relativeScaleUncertainty u of the delivery's scale, as a share of each added volume, 0 or
 *     above
 * @param points in any order
 */
public record GranPlot(
    Vessel sample,
    Quantity standardConcentration,
    double relativeScaleUncertainty,
    List<GranPoint> points) {

  /** Two for the line and one to see whether it is one. */
  private static final int FEWEST = 3;

  /** The concentration should at least double, as in {@link KnownAddition}. */
  private static final double AT_LEAST_DOUBLED = 2;

  public GranPlot {
    points = List.copyOf(points);
    if (!(standardConcentration.value() > 0)) {
      throw new IllegalArgumentException("a standard holds something of the ion");
    }
    if (!(relativeScaleUncertainty >= 0) || Double.isInfinite(relativeScaleUncertainty)) {
      throw new IllegalArgumentException("an uncertainty is 0 or above");
    }
  }

  /** The sample's concentration. */
  public AdditionOutcome of(Quantity slopeMillivoltsPerDecade) {
    return of(slopeMillivoltsPerDecade, Optional.empty());
  }

  /**
   * The sample's concentration, less a blank's.
   *
   * @param slopeMillivoltsPerDecade S, not 0
   * @param blank what the same procedure finds in water, in the unit of the standard
   */
  public AdditionOutcome of(Quantity slopeMillivoltsPerDecade, Quantity blank) {
    if (!blank.unit().equals(standardConcentration.unit())) {
      throw new IllegalArgumentException(
          "a blank is given in " + standardConcentration.unit() + ", not in " + blank.unit());
    }
    return of(slopeMillivoltsPerDecade, Optional.of(blank));
  }

  private AdditionOutcome of(Quantity slope, Optional<Quantity> blank) {
    if (slope.value() == 0) {
      throw new IllegalArgumentException("a slope is a number other than 0");
    }
    if (points.stream().map(GranPoint::addedMillilitres).distinct().count() < FEWEST) {
      return new NoAnswer(
          new Reason(
              "gran-too-few",
              "a plot needs three different volumes, nothing added among them if wanted",
              "Add standard again and read."));
    }
    GranFit fit = new GranFit(this, slope, blank);
    if (!fit.holdsNumbers()) {
      return new NoAnswer(
          new Reason(
              "gran-apart",
              "the potentials lie too far apart for any solution",
              "Look whether the slope is in mV/decade and each potential was read in the vessel."));
    }
    WeightedLine line = fit.line();
    if (!(line.estimate().slope() > 2 * Math.sqrt(line.estimate().slopeVariance()))) {
      return new NoAnswer(flatOrFalling(line));
    }
    double inflation = line.consistency().inflation();
    Budget budget = fit.budget(inflation * inflation);
    if (budget.value() < -budget.expandedUncertainty(2)) {
      return new NoAnswer(
          new Reason(
              "below-zero",
              String.format(
                  Locale.ROOT, "the plot meets zero at %.3g %s", budget.value(), budget.unit()),
              "Look whether the slope is the electrode's, and whether the sample binds the ion."));
    }
    List<Reason> remarks = new ArrayList<>();
    AnalyteAddition.nearZero(budget).ifPresent(remarks::add);
    if (fit.rise() < AT_LEAST_DOUBLED) {
      remarks.add(KnownAddition.small(fit.rise()));
    }
    if (!line.consistency().consistent()) {
      remarks.add(
          new Reason(
              "gran-misfit",
              String.format(
                  Locale.ROOT,
                  "the points lie off the line %.1f times as far as their uncertainties say",
                  inflation),
              "Look whether the slope is the electrode's and each potential was at rest."));
    }
    return new Answer(budget, remarks);
  }

  private static Reason flatOrFalling(WeightedLine line) {
    boolean falling = line.estimate().slope() < -2 * Math.sqrt(line.estimate().slopeVariance());
    return new Reason(
        falling ? "gran-wrong-way" : "gran-no-change",
        falling
            ? "the amount of the ion seems to fall with every addition"
            : "the amount of the ion does not rise by more than its uncertainty",
        falling
            ? "Look whether the slope has the ion's sign and the volumes stand by their potentials."
            : "Look whether the electrode responds; add more, or a stronger standard.");
  }

  /** The potentials, each on its own, their variances grown by a factor. */
  Joint potentials(double factor) {
    return joint(
        "potentials",
        points.stream().map(GranPoint::millivolts).toList(),
        (i, j) -> i == j ? factor * square(points.get(i).standardUncertaintyMillivolts()) : 0);
  }

  /** The added volumes, each on its own and all by the delivery's scale. */
  Joint volumes() {
    return joint(
        "added volumes",
        points.stream().map(GranPoint::addedMillilitres).toList(),
        (i, j) ->
            scaleError(i) * scaleError(j)
                + (i == j ? square(points.get(i).standardUncertaintyMillilitres()) : 0));
  }

  private double scaleError(int i) {
    return relativeScaleUncertainty * points.get(i).addedMillilitres();
  }

  /** Covariance of two points' quantities. */
  private interface Covariance {
    double of(int i, int j);
  }

  private static Joint joint(String name, List<Double> estimates, Covariance covariance) {
    int n = estimates.size();
    return Source.Joint.of(
        name,
        estimates,
        IntStream.range(0, n)
            .mapToObj(i -> IntStream.range(0, n).mapToObj(j -> covariance.of(i, j)).toList())
            .toList());
  }

  private static double square(double number) {
    return number * number;
  }
}
