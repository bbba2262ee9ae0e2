package org.restpoint.stability.calibration;

import java.util.List;
import java.util.Optional;
import org.restpoint.stability.electrode.Nernst;
import org.restpoint.stability.fit.Covariance;

/**
 * E0 from one standard, on a slope that is known otherwise.
 *
 * <p>{@code E0 = E − m·(T − Tref) − S·x}, {@code x = p + τ·(log10(a + b) − p)}. S and b are those
 * of the last accepted curve, with their covariance; without one, b is 0 and S the ideal slope at
 * the standard's temperature, whose uncertainty is then that of the slope limits.
 *
 * <p>{@code ∂E0/∂S = −x} and {@code ∂E0/∂b = −S·τ/((a + b)·ln 10)} carry the covariance of S and b
 * over to E0, so that they count for nothing at the standard itself and grow with the distance from
 * it. To it come u²(E) of the standard's potential and (S·τ·u(c)/c/ln 10)² of its concentration.
 *
 * @param calibrator what is asked for
 * @param point the standard
 */
record OneStandard(Calibrator calibrator, StandardPoint point) {

  private static final double LN_10 = Math.log(10);

  ResponseCurve on(Optional<ResponseCurve> lastAccepted) {
    ResponseCurve before = lastAccepted.orElseGet(this::ideal);
    Compensation compensation = calibrator.compensation();
    double slope = before.slopeMillivoltsPerDecade();
    double lowEnd = before.lowEndMolesPerLitre();
    double ratio = Nernst.kelvin(point.celsius()) / Nernst.kelvin(before.referenceCelsius());
    double bySlope = -compensation.abscissa(Math.log10(point.activity() + lowEnd), ratio);
    double byLowEnd = -slope * ratio / ((point.activity() + lowEnd) * LN_10);
    double warmer = point.celsius() - before.referenceCelsius();
    double offset =
        point.millivolts() - compensation.millivoltsPerKelvin() * warmer + slope * bySlope;
    double potential = point.standardUncertaintyMillivolts();
    double share =
        point.activity()
            / (point.activity() + lowEnd)
            * Math.hypot(point.relativeUncertainty(), calibrator.stockRelativeUncertainty());
    double standard = slope * ratio * share / LN_10;
    return new ResponseCurve(
        offset,
        slope,
        lowEnd,
        before.referenceCelsius(),
        compensation,
        carried(before.fromLine(), bySlope, byLowEnd, potential * potential),
        carried(before.fromStandards(), bySlope, byLowEnd, standard * standard));
  }

  private ResponseCurve ideal() {
    double slope = Nernst.idealSlopeMillivoltsPerDecade(calibrator.charge(), point.celsius());
    double deviation = slope * calibrator.limits().uncertaintyOfIdealPercent() / 100;
    return new ResponseCurve(
        0,
        slope,
        0,
        point.celsius(),
        calibrator.compensation(),
        new Covariance(3, List.of(0.0, 0.0, 0.0, 0.0, deviation * deviation, 0.0, 0.0, 0.0, 0.0)),
        ResponseCurve.NO_DOUBT);
  }

  /** The covariance of S and b carried over to E0, which has a variance of its own besides. */
  private static Covariance carried(
      Covariance before, double bySlope, double byLowEnd, double own) {
    double slope = before.of(1, 1);
    double both = before.of(1, 2);
    double lowEnd = before.of(2, 2);
    double offset = own + before.propagated(0, bySlope, byLowEnd);
    double withSlope = bySlope * slope + byLowEnd * both;
    double withLowEnd = bySlope * both + byLowEnd * lowEnd;
    return new Covariance(
        3,
        List.of(offset, withSlope, withLowEnd, withSlope, slope, both, withLowEnd, both, lowEnd));
  }
}
