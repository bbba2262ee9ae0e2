package org.restpoint.stability.calibration;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.restpoint.stability.calibration.CalibrationOutcome.PointFit;
import org.restpoint.stability.electrode.Nernst;
import org.restpoint.stability.fit.Consistency;
import org.restpoint.stability.fit.Covariance;
import org.restpoint.stability.fit.FittedPoint;
import org.restpoint.stability.fit.LowEndCurve;
import org.restpoint.stability.fit.LowEndFit;
import org.restpoint.stability.fit.LowEndStandards;
import org.restpoint.stability.fit.WeightedLine;

/**
 * The response curve of two standards or more by weighted least squares.
 *
 * <p>With the pivot p and the coefficient m of the compensation: {@code E − m·(T − Tref) = (E0 +
 * S·p) + S·τ·log10((a + b)/10^p)}, τ = T/Tref, Tref the mean temperature of the standards. Each
 * standard counts with {@code u² = u²(E) + (S·τ·a/(a + b)·u(c)/c/ln 10)²}; S is the ideal slope at
 * first, then twice the one found.
 *
 * <p>The covariance of (E0, S, b) follows from the sensitivities to each standard's potential, once
 * for the potentials and once for the concentrations; both times the Birge ratio squared where the
 * scatter is more than these uncertainties explain. What all standards share, u of their stock
 * solution, moves E0 alone: {@code (S·u/ln 10)²}. A low end b known beforehand adds u²(b)·J·Jᵀ with
 * J = ∂(E0, S, b)/∂b.
 */
final class StandardsFit {

  /**
   * What a potential is uncertain by at the least, in mV: it only keeps the weights finite, far
   * below any converter's step.
   */
  private static final double LEAST_MILLIVOLTS = 1e-6;

  private static final double LN_10 = Math.log(10);

  /** One line in twenty that is straight would be called bent: the common practice of tests. */
  private static final double SIGNIFICANCE = 0.05;

  /** Step, as a share of b, that its influence on E0 and S is found by. */
  private static final double STEP = 1e-4;

  private final Calibrator calibrator;
  private final List<StandardPoint> points;
  private final double referenceCelsius;
  private final double scale;
  private final double[] activities;
  private final double[] ratios;
  private final double[] potentials;

  StandardsFit(Calibrator calibrator, List<StandardPoint> points) {
    this.calibrator = calibrator;
    this.points = points;
    this.referenceCelsius =
        points.stream().mapToDouble(StandardPoint::celsius).average().orElseThrow();
    Compensation compensation = calibrator.compensation();
    this.scale = Math.pow(10, compensation.pivotDecades());
    double reference = Nernst.kelvin(referenceCelsius);
    this.activities = points.stream().mapToDouble(p -> p.activity() / scale).toArray();
    this.ratios =
        points.stream().mapToDouble(p -> Nernst.kelvin(p.celsius()) / reference).toArray();
    this.potentials =
        points.stream()
            .mapToDouble(
                p ->
                    p.millivolts()
                        - compensation.millivoltsPerKelvin() * (p.celsius() - referenceCelsius))
            .toArray();
  }

  /**
   * A curve with what there is to say of it.
   *
   * @param curve the curve
   * @param fits what it makes of each standard
   * @param residualMillivolts residual standard deviation, where there are degrees of freedom
   * @param remarks what to be careful about
   */
  record Drawn(
      ResponseCurve curve,
      List<PointFit> fits,
      OptionalDouble residualMillivolts,
      List<Reason> remarks) {}

  /**
   * A fit in the shape that lines and bent curves share.
   *
   * @param offset the potential at a' + b' = 1
   * @param slope S
   * @param lowEnd b' = b/10^p
   * @param sensitivities of offset, slope and b' to each potential
   * @param residuals of each standard
   * @param consistency of the scatter with the uncertainties
   * @param line the line on b', for the search for an outlying standard
   */
  private record Fitted(
      double offset,
      double slope,
      double lowEnd,
      List<List<Double>> sensitivities,
      List<Double> residuals,
      Consistency consistency,
      WeightedLine line) {

    static Fitted of(WeightedLine line, double lowEnd) {
      return new Fitted(
          line.estimate().intercept(),
          line.estimate().slope(),
          lowEnd,
          List.of(
              line.points().stream().map(FittedPoint::interceptSensitivity).toList(),
              line.points().stream().map(FittedPoint::slopeSensitivity).toList(),
              line.points().stream().map(p -> 0.0).toList()),
          line.points().stream().map(FittedPoint::residual).toList(),
          line.consistency(),
          line);
    }
  }

  /** log10 of the standards' activities. */
  double[] logActivities() {
    return points.stream().mapToDouble(p -> Math.log10(p.activity())).toArray();
  }

  /** What a straight line is drawn over. */
  double[] abscissas() {
    double[] x = logActivities();
    for (int i = 0; i < x.length; i++) {
      x[i] = calibrator.compensation().abscissa(x[i], ratios[i]);
    }
    return x;
  }

  /** The curve; empty where the potential is the same whatever the standard. */
  Optional<Drawn> drawn() {
    List<Reason> remarks = new ArrayList<>();
    double slope = Nernst.idealSlopeMillivoltsPerDecade(calibrator.charge(), referenceCelsius);
    Fitted fitted = fit(slope, remarks);
    for (int again = 0; again < 2 && fitted.slope() != 0; again++) {
      remarks.clear();
      fitted = fit(fitted.slope(), remarks);
    }
    if (fitted.slope() == 0) {
      return Optional.empty();
    }
    remarks.addAll(StandardsRemarks.of(points, fitted.consistency(), fitted.line()));
    return Optional.of(
        new Drawn(curve(fitted), fits(fitted), deviation(fitted), List.copyOf(remarks)));
  }

  private Fitted fit(double slope, List<Reason> remarks) {
    LowEnd lowEnd = calibrator.lowEnd();
    if (lowEnd instanceof LowEnd.Fixed fixed) {
      double known = fixed.molesPerLitre() / scale;
      return Fitted.of(standards(slope, known).atBackground(known).orElseThrow(), known);
    }
    LowEndStandards straight = standards(slope, 0);
    if (lowEnd instanceof LowEnd.Curved) {
      LowEndFit fit = straight.fit(SIGNIFICANCE);
      if (fit instanceof LowEndFit.Curved curved) {
        LowEndCurve curve = curved.curve();
        WeightedLine line = straight.atBackground(curve.background()).orElseThrow();
        return new Fitted(
            curve.offset(),
            curve.slope(),
            curve.background(),
            curve.sensitivities(),
            curve.residuals(),
            curve.consistency(),
            line);
      }
      remarks.add(StandardsRemarks.straight(fit));
    }
    return Fitted.of(straight.atBackground(0).orElseThrow(), 0);
  }

  private LowEndStandards standards(double slope, double lowEnd) {
    double[] u = new double[points.size()];
    for (int i = 0; i < u.length; i++) {
      u[i] =
          Math.max(
              LEAST_MILLIVOLTS,
              Math.hypot(
                  points.get(i).standardUncertaintyMillivolts(),
                  concentrationMillivolts(i, slope, lowEnd)));
    }
    return LowEndStandards.of(activities, ratios, potentials, u);
  }

  /** What a standard's concentration is uncertain by, as a potential. */
  private double concentrationMillivolts(int i, double slope, double lowEnd) {
    double share = activities[i] / (activities[i] + lowEnd);
    return slope * ratios[i] * share * points.get(i).relativeUncertainty() / LN_10;
  }

  private ResponseCurve curve(Fitted fitted) {
    double pivot = calibrator.compensation().pivotDecades();
    double inflation = fitted.consistency().inflation();
    double[] potential = new double[points.size()];
    double[] concentration = new double[points.size()];
    for (int i = 0; i < potential.length; i++) {
      double u = Math.max(LEAST_MILLIVOLTS, points.get(i).standardUncertaintyMillivolts());
      double c = concentrationMillivolts(i, fitted.slope(), fitted.lowEnd());
      potential[i] = inflation * inflation * u * u;
      concentration[i] = inflation * inflation * c * c;
    }
    List<List<Double>> sensitivities = unscaled(fitted.sensitivities(), pivot);
    return new ResponseCurve(
        fitted.offset() - fitted.slope() * pivot,
        fitted.slope(),
        fitted.lowEnd() * scale,
        referenceCelsius,
        calibrator.compensation(),
        Covariance.of(sensitivities, potential),
        Covariance.of(sensitivities, concentration)
            .plus(stock(fitted.slope()))
            .plus(known(fitted, pivot)));
  }

  /** From the sensitivities of offset, S and b' to those of E0, S and b. */
  private List<List<Double>> unscaled(List<List<Double>> by, double pivot) {
    List<Double> offset = new ArrayList<>();
    for (int i = 0; i < points.size(); i++) {
      offset.add(by.get(0).get(i) - pivot * by.get(1).get(i));
    }
    return List.of(offset, by.get(1), by.get(2).stream().map(b -> b * scale).toList());
  }

  private Covariance stock(double slope) {
    double offset = slope * calibrator.stockRelativeUncertainty() / LN_10;
    return Covariance.of(List.of(List.of(offset), List.of(0.0), List.of(0.0)), new double[] {1});
  }

  /** What a low end known beforehand adds by not being known exactly. */
  private Covariance known(Fitted fitted, double pivot) {
    if (!(calibrator.lowEnd() instanceof LowEnd.Fixed fixed)) {
      return ResponseCurve.NO_DOUBT;
    }
    double step = STEP * fitted.lowEnd();
    Fitted beside =
        Fitted.of(
            standards(fitted.slope(), fitted.lowEnd())
                .atBackground(fitted.lowEnd() + step)
                .orElseThrow(),
            fitted.lowEnd() + step);
    double slope = (beside.slope() - fitted.slope()) / (step * scale);
    double offset = (beside.offset() - fitted.offset()) / (step * scale) - pivot * slope;
    double u = fixed.standardUncertainty();
    return Covariance.of(
        List.of(List.of(offset), List.of(slope), List.of(1.0)), new double[] {u * u});
  }

  private List<PointFit> fits(Fitted fitted) {
    List<PointFit> fits = new ArrayList<>();
    for (int i = 0; i < points.size(); i++) {
      double sum = activities[i] + fitted.lowEnd();
      double leverage =
          fitted.sensitivities().get(0).get(i)
              + ratios[i] * Math.log10(sum) * fitted.sensitivities().get(1).get(i)
              + fitted.slope() * ratios[i] / (sum * LN_10) * fitted.sensitivities().get(2).get(i);
      fits.add(new PointFit(fitted.residuals().get(i), Math.max(0, Math.min(1, leverage))));
    }
    return fits;
  }

  private OptionalDouble deviation(Fitted fitted) {
    int freedom = fitted.consistency().degreesOfFreedom();
    if (freedom == 0) {
      return OptionalDouble.empty();
    }
    double squares = fitted.residuals().stream().mapToDouble(r -> r * r).sum();
    return OptionalDouble.of(Math.sqrt(squares / freedom));
  }
}
