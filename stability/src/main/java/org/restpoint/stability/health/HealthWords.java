package org.restpoint.stability.health;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Locale;
import org.restpoint.stability.calibration.Reason;

/** What a drift or a jump is called, and what to do about it, for a person. */
final class HealthWords {

  private HealthWords() {}

  static Reason drifting(
      Observation latest, Baseline base, Trend trend, Projection projection, HealthLimits limits) {
    Quantity quantity = latest.quantity();
    String unit = quantity.unit();
    String seen =
        String.format(
            Locale.ROOT,
            "the %s%s changes by %.3g %s a day (%.3g to %.3g, over %d observations): %.4g %s at"
                + " first, %.4g %s now",
            quantity.words(),
            in(latest),
            trend.perDay(),
            unit,
            trend.lowPerDay(),
            trend.highPerDay(),
            trend.points(),
            base.median(),
            unit,
            trend.fittedLatest(),
            unit);
    double limit = limits.ahead(trend.perDay()).orElse(Double.NaN);
    String ahead;
    if (projection instanceof Projection.On on) {
      ahead =
          String.format(
              Locale.ROOT,
              "; if it goes on, it is at %s %s on %s (%s at the earliest)",
              limit,
              unit,
              day(on.time()),
              day(on.earliest()));
    } else if (projection instanceof Projection.Reached) {
      ahead = String.format(Locale.ROOT, "; it has come to its limit of %s %s", limit, unit);
    } else {
      ahead = "";
    }
    return new Reason("health-drifting", seen + ahead, remedy(quantity));
  }

  static Reason jumped(Observation latest, double expected, double deviations) {
    Quantity quantity = latest.quantity();
    return new Reason(
        "health-jumped",
        String.format(
            Locale.ROOT,
            "the %s%s is %.4g %s where %.4g %s was to be expected, %.1f deviations away",
            quantity.words(),
            in(latest),
            latest.value(),
            quantity.unit(),
            expected,
            quantity.unit(),
            deviations),
        "Read the standard again in a fresh portion. If it stays: " + remedy(quantity));
  }

  private static String in(Observation observation) {
    return observation.quantity().perStandard() ? " in " + observation.standard() : "";
  }

  private static String day(Instant time) {
    return time.atOffset(ZoneOffset.UTC).toLocalDate().toString();
  }

  private static String remedy(Quantity quantity) {
    return switch (quantity) {
      case SLOPE_PERCENT ->
          "Soak or clean the electrode; have a new membrane at hand before the slope is too low.";
      case OFFSET_MILLIVOLTS ->
          "Look at the reference: refill its electrolyte, clear its junction; look whether the"
              + " standard is still what it was.";
      case RESPONSE_SECONDS ->
          "Clean the membrane, rinse between solutions, stir at the same speed; an old membrane"
              + " grows slow.";
      case NOISE_MILLIVOLTS ->
          "Look for loose plugs, a dry junction, an air bubble, a stirrer or mains cable near the"
              + " electrode's.";
    };
  }
}
