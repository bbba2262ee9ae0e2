package org.restpoint.stability.rest.forecast;

/**
 * The response curves held to the readings, in a fixed order that a {@link ResponsePrior} counts
 * by, and what the last fit made of each.
 *
 * <p>First the shapes on the scale of potentials, {@code y = E + a·g(t)} in mV; then exponentials,
 * membrane and stretched shapes on the scale of activities, {@code 10^(y/S) = A + a·g(t)}, whose
 * rest is {@code S·log₁₀ A}; then the pairs of exponentials on the scale of potentials.
 *
 * <p>Before any reading each of the nine kinds is held as likely as another, and within a kind each
 * member (on a geometric row of time constants this is the prior that knows no scale; Jaynes 1968,
 * IEEE Trans. Syst. Sci. Cybern. 4, 227).
 */
final class Candidates {

  static final int FIRST_ON_ACTIVITIES = Shapes.COUNT;
  static final int FIRST_PAIR = FIRST_ON_ACTIVITIES + Shapes.FIRST_POWER;
  static final int COUNT = FIRST_PAIR + Pairs.COUNT;

  private static final int KINDS = 9;

  /** E in mV or A on its scale, less where the readings began. */
  final double[] rest = new double[COUNT];

  final double[] amplitude = new double[COUNT];
  final double[] slowAmplitude = new double[Pairs.COUNT];

  /** What it explains of Σw(y − ȳ)², on its scale. */
  final double[] explained = new double[COUNT];

  /** Mean square of what it leaves unexplained, in mV². */
  final double[] meanSquare = new double[COUNT];

  /** det(1 + Λ⁻¹C), what its freedom costs it. */
  final double[] freedom = new double[COUNT];

  /** Its rest in mV since where the readings began, and the variance of it. */
  final double[] restMillivolts = new double[COUNT];

  final double[] variance = new double[COUNT];

  /** Places of those worth weighing, the first so many. */
  final int[] likely = new int[COUNT];

  int likelyCount;

  /** How likely each is, of all 1. */
  final double[] weight = new double[COUNT];

  /** The likelihood of each before any reading, of all 1. */
  static double[] uninformed() {
    double[] prior = new double[COUNT];
    even(prior, 0, Shapes.EXPONENTIALS);
    even(prior, Shapes.FIRST_MEMBRANE, Shapes.MEMBRANES);
    even(prior, Shapes.FIRST_STRETCHED, Shapes.STRETCHED);
    even(prior, Shapes.FIRST_POWER, Shapes.HYPERBOLAS);
    even(prior, Shapes.FIRST_POWER + Shapes.HYPERBOLAS, 2 * Shapes.HYPERBOLAS);
    even(prior, FIRST_ON_ACTIVITIES, Shapes.EXPONENTIALS);
    even(prior, FIRST_ON_ACTIVITIES + Shapes.FIRST_MEMBRANE, Shapes.MEMBRANES);
    even(prior, FIRST_ON_ACTIVITIES + Shapes.FIRST_STRETCHED, Shapes.STRETCHED);
    even(prior, FIRST_PAIR, Pairs.COUNT);
    return prior;
  }

  private static void even(double[] prior, int first, int count) {
    for (int i = first; i < first + count; i++) {
      prior[i] = 1.0 / KINDS / count;
    }
  }

  static boolean isOnActivities(int curve) {
    return curve >= FIRST_ON_ACTIVITIES && curve < FIRST_PAIR;
  }

  static boolean isPair(int curve) {
    return curve >= FIRST_PAIR;
  }
}
