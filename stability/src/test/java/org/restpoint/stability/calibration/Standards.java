package org.restpoint.stability.calibration;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.restpoint.stability.fit.Covariance;

/** Standards for tests; times and names are invented. */
final class Standards {

  /** The slope limits of the tests: 90 to 103 %. */
  static final SlopeLimits LIMITS = new SlopeLimits(90, 103);

  private static final Instant MORNING = Instant.parse("2026-04-02T08:00:00Z");

  private Standards() {}

  /** A standard known exactly and read exactly, at 25 °C. */
  static StandardPoint at(double molesPerLitre, double millivolts) {
    return at(molesPerLitre, millivolts, 25);
  }

  static StandardPoint at(double molesPerLitre, double millivolts, double celsius) {
    return at(molesPerLitre, 0, millivolts, 0, celsius);
  }

  static StandardPoint at(
      double molesPerLitre,
      double relativeUncertainty,
      double millivolts,
      double standardUncertaintyMillivolts,
      double celsius) {
    return new StandardPoint(
        "standard",
        molesPerLitre,
        relativeUncertainty,
        1,
        millivolts,
        standardUncertaintyMillivolts,
        celsius,
        MORNING);
  }

  static List<StandardPoint> at(double[] molesPerLitre, double[] millivolts) {
    List<StandardPoint> points = new ArrayList<>();
    for (int i = 0; i < molesPerLitre.length; i++) {
      points.add(at(molesPerLitre[i], millivolts[i]));
    }
    return points;
  }

  /** A straight line with variances of E0 and S and their covariance. */
  static ResponseCurve curve(
      double offset,
      double slope,
      double celsius,
      double offsetVariance,
      double slopeVariance,
      double covariance) {
    return new ResponseCurve(
        offset,
        slope,
        0,
        celsius,
        Compensation.ideal(),
        new Covariance(
            3,
            List.of(
                offsetVariance, covariance, 0.0, covariance, slopeVariance, 0.0, 0.0, 0.0, 0.0)),
        ResponseCurve.NO_DOUBT);
  }
}
