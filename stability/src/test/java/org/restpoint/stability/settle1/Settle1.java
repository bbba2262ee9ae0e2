package org.restpoint.stability.settle1;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * The set of curves that rules of rest are held to. Invented; ranges of parameters from common
 * practice, from memory.
 *
 * <p>One {@code java.util.Random(seed)} draws the whole set, whose algorithm is fixed by its
 * documentation: the same seed gives the same curves to the last bit, and a smaller set is the
 * beginning of a larger one. For each curve in turn:
 *
 * <ol>
 *   <li>{@code nextDouble}: temperature, U(283.15, 303.15) K
 *   <li>{@code nextDouble}: slope, −59.16·T/298.15·U(0.90, 1.00) mV/decade
 *   <li>{@code nextDouble}: size of the step, U(0.1, 2) decades
 *   <li>{@code nextBoolean}: true for a step up in concentration, false for one down
 *   <li>{@code nextDouble}: final log10 c, U(−5, −1), c in mol/L
 *   <li>{@code nextDouble}: the model, by {@link Model#share}
 *   <li>the model's parameters, in the order of its formula; all times are multiplied by {@code
 *       10^(0.15·(−3 − log10 c))} where the final c is below 1e−3 mol/L
 *   <li>the noise: see {@link Noise#draw}
 *   <li>the readings, t = 0 s … 899 s: see {@link Noise#readings}
 * </ol>
 */
public final class Settle1 {

  /** Readings a curve has, one a second; a rule that has not decided by then never does. */
  public static final int SECONDS = 900;

  /** Curves of each set. */
  public static final int CURVES = 2000;

  /** The set that settings are chosen on. */
  public static final long TUNING_SEED = 20260711;

  /** The sets that are reported. */
  public static final List<Long> REPORT_SEEDS =
      List.of(20260801L, 20260802L, 20260803L, 20260804L, 20260805L);

  private static final double NERNST_25_CELSIUS = 59.16;
  private static final double KELVIN_25_CELSIUS = 298.15;
  private static final double DILUTE_LOG10 = -3;
  private static final double SLOWER_PER_DECADE = 0.15;

  private Settle1() {}

  /** The first curves of a seed. */
  public static List<Curve> curves(long seed, int count) {
    Random random = new Random(seed);
    List<Curve> curves = new ArrayList<>(count);
    for (int i = 0; i < count; i++) {
      curves.add(curve(random));
    }
    return curves;
  }

  private static Curve curve(Random random) {
    double kelvin = Draw.uniform(random, 283.15, 303.15);
    double slope = slope(random, kelvin);
    double size = Draw.uniform(random, 0.1, 2);
    boolean up = random.nextBoolean();
    double after = Draw.uniform(random, -5, -1);
    double before = up ? after - size : after + size;
    Step step = new Step(kelvin, slope, before, after);
    Model model = Model.draw(random);
    Response response = model.response(random, slower(after));
    Noise noise = Noise.draw(random);
    Trace trace = noise.readings(random, step, response, SECONDS);
    return new Curve(model, step, response, noise, trace);
  }

  /** Draws the slope of an electrode in mV/decade: a {@code nextDouble}. */
  static double slope(Random random, double kelvin) {
    double ideal = -NERNST_25_CELSIUS * kelvin / KELVIN_25_CELSIUS;
    return ideal * Draw.uniform(random, 0.90, 1.00);
  }

  /** How much slower an electrode is in a dilute sample: 1 or above. */
  static double slower(double log10After) {
    return log10After < DILUTE_LOG10
        ? StrictMath.pow(10, SLOWER_PER_DECADE * (DILUTE_LOG10 - log10After))
        : 1;
  }
}
