package org.restpoint.acquisition.demo;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.restpoint.acquisition.event.Calibration;
import org.restpoint.acquisition.event.Progress;
import org.restpoint.acquisition.event.Result;
import org.restpoint.stability.calibration.Reason;

/** What the station says, in sentences for the account. */
final class Sentences {

  private Sentences() {}

  static String progress(Progress progress) {
    String drift =
        progress.driftMillivoltsPerMinute().isPresent()
            ? number(", drifting %+.2f mV/min", progress.driftMillivoltsPerMinute().getAsDouble())
            : "";
    String forecast =
        progress.forecastMillivolts().isPresent()
            ? number(", foreseen at %.2f ", progress.forecastMillivolts().getAsDouble())
                + number(
                    "\u00b1 %.2f mV (k = 1)",
                    progress.forecastUncertaintyMillivolts().orElseThrow())
            : "";
    return number("%8.2f mV", progress.latestMillivolts()) + drift + forecast;
  }

  static String calibration(Calibration calibration) {
    String rest =
        calibration.points().stream()
            .reduce((earlier, later) -> later)
            .map(point -> number("At rest at %.2f mV. ", point.millivolts()))
            .orElse("");
    String standards =
        calibration.points().stream()
            .map(Calibration.Point::standard)
            .collect(Collectors.joining(", "));
    if (calibration.verdict() == Calibration.Verdict.REFUSED) {
      Reason why = calibration.reasons().get(0);
      return rest + "REFUSED (%s), %s: %s.".formatted(standards, why.code(), why.text());
    }
    return rest
        + "ACCEPTED (%s): %s%s."
            .formatted(standards, slope(calibration), flags(calibration.flags()));
  }

  private static String slope(Calibration calibration) {
    String slope =
        number("%.2f mV/decade, ", calibration.slopeMillivoltsPerDecade().orElseThrow())
            + number("%.1f %% of the ideal", calibration.slopePercent().orElseThrow());
    return switch (calibration.slopeFrom().orElseThrow()) {
      case "ideal" -> "one standard gives the offset; the slope is taken as the ideal one";
      case "last accepted" -> "a new offset; the slope is kept, " + slope;
      default -> "the slope is " + slope;
    };
  }

  static String result(Result result) {
    if (result.concentration().isEmpty()) {
      return "NO NUMBER, " + reasons(result.reasons());
    }
    Result.Amount amount = result.concentration().get();
    String recovery =
        result
            .verification()
            .filter(check -> check.recoveryPercent().isPresent())
            .map(
                check ->
                    number(" Expected %s %s:", check.expected(), amount.unit())
                        + number(" recovery %.1f %%.", check.recoveryPercent().getAsDouble()))
            .orElse("");
    String rest = result.forecast() ? "Foreseen at" : "At rest at";
    return rest
        + number(" %.2f mV after ", result.millivolts().orElseThrow())
        + number("%.0f s, %.1f \u00b0C. ", result.elapsedSeconds(), result.celsius().orElseThrow())
        + "RESULT %s %s %s, quality %s%s.%s"
            .formatted(
                amount(amount),
                amount.unit(),
                amount.basis(),
                result.quality() == 1 ? "1 (pass)" : result.quality() + " (suspect)",
                flags(result.flags()),
                recovery);
  }

  /** A value with its uncertainty, two digits of it (JCGM 100:2008, 7.2.6). */
  static String amount(Result.Amount amount) {
    BigDecimal uncertainty =
        new BigDecimal(amount.uncertainty()).round(new MathContext(2, RoundingMode.HALF_EVEN));
    int decimals = Math.max(0, uncertainty.scale());
    return new BigDecimal(amount.value()).setScale(decimals, RoundingMode.HALF_EVEN).toPlainString()
        + " \u00b1 "
        + uncertainty.setScale(decimals, RoundingMode.HALF_EVEN).toPlainString();
  }

  static String flags(List<String> flags) {
    if (flags.isEmpty()) {
      return "";
    }
    return (flags.size() == 1 ? "; flag " : "; flags ") + String.join(", ", flags);
  }

  static String word(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT);
  }

  private static String reasons(List<Reason> reasons) {
    return reasons.stream()
        .map(why -> "%s: %s. %s".formatted(why.code(), why.text(), why.remedy()).strip())
        .collect(Collectors.joining(" "));
  }

  static String number(String format, Object... values) {
    return String.format(Locale.ROOT, format, values);
  }
}
