package org.restpoint.stability.suspicion;

import java.util.Locale;

/**
 * What the way a standard came to rest says, beside how it usually does. A sign of which nothing is
 * known does not hold.
 *
 * @param clues what is known
 */
record RestSigns(Clues clues) {

  /** Readings of one standard take longer or shorter by half; this is more. */
  private static final double SLOW_FACTOR = 2.5;

  private static final double SLOW_SECONDS = 20;

  /** Noise three times as large as usual is another noise. */
  private static final double NOISY_FACTOR = 3;

  /** Below it a meter's own digits make the difference. */
  private static final double LEAST_NOISE_MILLIVOLTS = 0.3;

  /** A solution at rest is quieter, where its usual spread is not known. */
  private static final double NOISY_MILLIVOLTS = 1;

  boolean isUnsettled() {
    return clues.rested().filter(rested -> !rested.settled()).isPresent();
  }

  boolean isCreeping() {
    return clues.rested().filter(HowItRested::creeping).isPresent();
  }

  boolean isForetold() {
    return clues.rested().filter(HowItRested::foretold).isPresent();
  }

  boolean isSlow() {
    double usual = clues.usualSeconds().orElse(Double.POSITIVE_INFINITY);
    return clues
        .rested()
        .filter(HowItRested::settled)
        .filter(r -> r.seconds() >= SLOW_FACTOR * usual && r.seconds() >= usual + SLOW_SECONDS)
        .isPresent();
  }

  boolean isNoisy() {
    double limit =
        clues.usualSpreadMillivolts().isPresent()
            ? Math.max(
                NOISY_FACTOR * clues.usualSpreadMillivolts().getAsDouble(), LEAST_NOISE_MILLIVOLTS)
            : NOISY_MILLIVOLTS;
    return clues.rested().filter(rested -> rested.spreadMillivolts() > limit).isPresent();
  }

  boolean restedAsUsual() {
    return clues.usualSeconds().isPresent()
        && clues.rested().filter(HowItRested::settled).isPresent()
        && !isSlow()
        && !isNoisy()
        && !isCreeping();
  }

  /** How long it took beside how long it usually takes. */
  String seconds() {
    String taken =
        String.format(Locale.ROOT, "%.0f s", clues.rested().map(HowItRested::seconds).orElse(0.0));
    return clues.usualSeconds().isPresent()
        ? taken + String.format(Locale.ROOT, ", usually %.0f s", clues.usualSeconds().getAsDouble())
        : taken;
  }

  /** Its spread beside its usual one. */
  String spread() {
    String seen =
        String.format(
            Locale.ROOT, "%.2f mV", clues.rested().map(HowItRested::spreadMillivolts).orElse(0.0));
    return clues.usualSpreadMillivolts().isPresent()
        ? seen
            + String.format(
                Locale.ROOT, ", usually over %.2f mV", clues.usualSpreadMillivolts().getAsDouble())
        : seen;
  }
}
