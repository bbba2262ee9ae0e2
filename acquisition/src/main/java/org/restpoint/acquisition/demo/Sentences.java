package org.restpoint.acquisition.demo;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
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
            ? number(", foretold at %.2f ", progress.forecastMillivolts().getAsDouble())
                + number(
                    "\u00b1 %.2f mV (k = 1)",
                    progress.forecastUncertaintyMillivolts().orElseThrow())
            : "";
    return number("%8.2f mV", progress.latestMillivolts()) + drift + forecast;
  }

  /** A calibration, of whose last standard the electrode read so much when it was decided. */
  static String calibration(Calibration calibration, OptionalDouble readMillivolts) {
    String rest =
        calibration.points().stream()
            .reduce((earlier, later) -> later)
            .map(point -> rest(point.millivolts(), point.forecast(), "", readMillivolts) + ". ")
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

  private static String rest(
      double millivolts, boolean forecast, String learnt, OptionalDouble readMillivolts) {
    if (!forecast) {
      return number("At rest at %.2f mV", millivolts);
    }
    String read =
        readMillivolts.isPresent() ? number("; it read %.2f mV", readMillivolts.getAsDouble()) : "";
    return number("Foretold to rest at %.2f mV", millivolts) + learnt + read;
  }

  /** A result, when the electrode read so much when it was decided. */
  static String result(Result result, OptionalDouble readMillivolts) {
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
                    number(" Expected %s %s:", check.expected().orElse(0), amount.unit())
                        + number(" recovery %.1f %%.", check.recoveryPercent().getAsDouble()))
            .orElse("");
    return rest(
            result.millivolts().orElseThrow(), result.forecast(), learnt(result), readMillivolts)
        + number(
            " after %.0f s, %.1f \u00b0C. ",
            result.elapsedSeconds(), result.celsius().orElseThrow())
        + "RESULT %s %s %s, quality %s%s.%s"
            .formatted(
                amount(amount),
                amount.unit(),
                amount.basis(),
                result.quality() == 1 ? "1 (pass)" : result.quality() + " (suspect)",
                flags(result.flags()),
                recovery);
  }

  private static String learnt(Result result) {
    long readings = result.responseReadings().orElse(0);
    return readings == 0
        ? ""
        : " from this and the %s before"
            .formatted(readings == 1 ? "reading" : readings + " readings");
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
