package org.restpoint.stability.calibration;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;
import java.util.Optional;
import org.restpoint.stability.electrode.Nernst;

/**
 * What there is to say against a slope, in words for a person.
 *
 * @param charge charge number of the ion
 * @param limits the slopes that are accepted
 */
record SlopeVerdict(int charge, SlopeLimits limits) {

  /** An electrode that answers less than this share of the ideal slope does not answer at all. */
  private static final double NO_ANSWER_PERCENT = 5;

  /** The reason to refuse a slope drawn through standards, if there is one. */
  Optional<Reason> onFitted(ResponseCurve line) {
    double percent = line.slopePercent(charge);
    if (accepts(percent)) {
      return Optional.empty();
    }
    if (Math.abs(percent) < NO_ANSWER_PERCENT) {
      return Optional.of(
          none("the potential is nearly the same in all standards: " + seen(line, percent)));
    }
    if (percent < 0) {
      return Optional.of(
          new Reason(
              "slope-reversed",
              seen(line, percent) + ": it has the wrong sign",
              "Look whether electrode and reference are swapped at the meter, whether the meter"
                  + " shows the potential with its sign, and whether standards were swapped."));
    }
    if (percent < limits.lowPercent()) {
      return Optional.of(
          new Reason(
              "slope-low",
              seen(line, percent) + accepted(),
              "Read the standards again with fresh portions, rinsed and blotted between them; look"
                  + " for an air bubble; soak the electrode; if it stays low, the membrane is"
                  + " ageing."));
    }
    return Optional.of(
        new Reason(
            "slope-high",
            seen(line, percent) + accepted(),
            "Read the standards again with fresh portions: one of them is likely diluted,"
                + " contaminated or swapped, or the electrode carried solution from one to the"
                + " next."));
  }

  /** The reason to refuse a slope kept from an earlier calibration, if there is one. */
  Optional<Reason> onSlopeTakenOver(ResponseCurve last) {
    double percent = last.slopePercent(charge);
    if (accepts(percent)) {
      return Optional.empty();
    }
    return Optional.of(
        new Reason(
            "slope-outdated",
            "in the last calibration, " + seen(last, percent) + accepted(),
            "The ion or the slope limits have changed since: calibrate with two standards or"
                + " more."));
  }

  static Reason alike() {
    return new Reason(
        "standards-alike",
        "all standards have the same concentration, so no slope can be drawn",
        "Read a standard of another concentration, a decade away if there is one.");
  }

  static Reason alikeByTemperature() {
    return new Reason(
        "standards-alike",
        "the standards differ by their temperatures as much as by their concentrations, so no"
            + " slope can be drawn",
        "Bring the standards to the same temperature and read them again.");
  }

  static Reason flat() {
    return none("the potential is the same in all standards");
  }

  private static Reason none(String text) {
    return new Reason(
        "slope-none",
        text,
        "Look whether the electrode is connected, has its cap off and stands in the solution.");
  }

  private boolean accepts(double percent) {
    return percent >= limits.lowPercent() && percent <= limits.highPercent();
  }

  private String seen(ResponseCurve line, double percent) {
    return String.format(
        Locale.ROOT,
        "the slope is %.2f mV/decade, %s %% of the ideal %.2f at %.1f °C",
        line.slopeMillivoltsPerDecade(),
        rounded(percent),
        Nernst.idealSlopeMillivoltsPerDecade(charge, line.referenceCelsius()),
        line.referenceCelsius());
  }

  /** With one decimal, or as many as it takes to tell a refused percentage from an accepted one. */
  private String rounded(double percent) {
    BigDecimal exact = new BigDecimal(percent);
    BigDecimal shown = exact.setScale(1, RoundingMode.HALF_EVEN);
    for (int scale = 2; accepts(shown.doubleValue()) != accepts(percent); scale++) {
      shown = exact.setScale(scale, RoundingMode.HALF_EVEN);
    }
    return shown.toPlainString();
  }

  private String accepted() {
    return String.format(
        Locale.ROOT, "; accepted are %s to %s %%", limits.lowPercent(), limits.highPercent());
  }
}
