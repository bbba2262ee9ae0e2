package org.restpoint.adapters.guess;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.IntFunction;

/** Samples of invented meters: sixteen lines, each a burst of its own. */
final class Meter {

  /** How the numbers wander, in steps. */
  private static final double[] NOISE = {
    .3, -.1, .2, .05, -.25, .13, .4, -.31, .22, .01, -.04, .17, .09, -.2, .33, .11
  };

  private Meter() {}

  /** The n-th of wandering numbers, within ±0.4. */
  static double noise(int n) {
    return NOISE[n % NOISE.length];
  }

  static String written(String format, Object... numbers) {
    return String.format(Locale.ROOT, format, numbers);
  }

  /** A meter that was heard from the beginning of a line. */
  static Sample heard(IntFunction<String> line) {
    return new Sample(bursts(line), true);
  }

  static List<byte[]> bursts(IntFunction<String> line) {
    List<byte[]> bursts = new ArrayList<>();
    for (int i = 0; i < NOISE.length; i++) {
      bursts.add(line.apply(i).getBytes(StandardCharsets.ISO_8859_1));
    }
    return bursts;
  }

  /** What is proposed for a meter. */
  static LineProposal proposed(IntFunction<String> line) {
    return ((LineGuess.Proposed) LineGuess.of(heard(line))).proposal();
  }
}
