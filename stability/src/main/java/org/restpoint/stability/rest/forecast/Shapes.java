package org.restpoint.stability.rest.forecast;

/**
 * The ways by which electrodes come to rest: functions g(t) of the time since the step that fall
 * from 1 to 0, so that a response is {@code E + a·g(t)}, at rest at E.
 *
 * <pre>
 *   exponential        g = e^(−t/τ)              τ = 2^(i/7) s,     i = 0 … 57   (1 … 283 s)
 *   membrane           g = 1/(√(t/τ) + 1)        τ = 10⁻⁴·4^i s,    i = 0 … 5    (0.1 … 102 ms)
 *   stretched, β = ½   g = e^(−(t/τ)^½)          τ = 2^(2i/5) s,    i = 0 … 20   (1 … 256 s)
 *   stretched, β = 0.7 g = e^(−(t/τ)^0.7)        τ = 2^(i/3.5) s,   i = 0 … 28   (1 … 256 s)
 *   power, p = 1, ½, 1½  g = (k/(t + k))^p       k = 0.3·1.3^i s,   i = 0 … 18   (0.3 … 34 s)
 * </pre>
 *
 * <p>Exponential: diffusion through a film of liquid (Morf, Lindner, Simon 1975; Lindner, Tóth,
 * Pungor 1976). Membrane: diffusion within the membrane (the same). Power with p = 1: the customary
 * hyperbola; the other powers and the stretched exponentials stand for distributed time constants.
 * The spacing is our choice: neighbours differ by less than the error of shape that the fit grants
 * (see {@link ResponseFit}).
 *
 * <p>Exponents of one family stand in a geometric row, so all but the slowest octave are squares:
 * {@code e^(−2x) = (e^(−x))²}; a reading costs seventeen exponentials, whatever its interval.
 *
 * <p>References: W. E. Morf, E. Lindner, W. Simon, Anal. Chem. 47 (1975) 1596; E. Lindner, K. Tóth,
 * E. Pungor, Anal. Chem. 48 (1976) 1071 (both from memory).
 */
final class Shapes {

  static final int EXPONENTIALS = 58;
  static final int MEMBRANES = 6;
  static final int STRETCHED = 21 + 29;
  static final int HYPERBOLAS = 19;

  static final int FIRST_MEMBRANE = EXPONENTIALS;
  static final int FIRST_STRETCHED = FIRST_MEMBRANE + MEMBRANES;
  static final int FIRST_POWER = FIRST_STRETCHED + STRETCHED;
  static final int COUNT = FIRST_POWER + 3 * HYPERBOLAS;

  private static final int EXPONENTIALS_PER_OCTAVE = 7;
  private static final int STRETCHED_PER_OCTAVE = 5;
  static final int ROOTS = 21;
  private static final double STEEPER = 0.7;

  private final double[] rate = new double[FIRST_POWER];
  private final double[] k = new double[HYPERBOLAS];
  private final double[] values = new double[COUNT];

  Shapes() {
    for (int i = 0; i < EXPONENTIALS; i++) {
      rate[i] = Math.pow(2, -i / (double) EXPONENTIALS_PER_OCTAVE);
    }
    for (int i = 0; i < MEMBRANES; i++) {
      rate[FIRST_MEMBRANE + i] = 1 / Math.sqrt(1e-4 * Math.pow(4, i));
    }
    for (int i = 0; i < ROOTS; i++) {
      rate[FIRST_STRETCHED + i] = Math.pow(2, -i / (double) STRETCHED_PER_OCTAVE);
    }
    for (int i = ROOTS; i < STRETCHED; i++) {
      rate[FIRST_STRETCHED + i] = Math.pow(2, -(i - ROOTS) / (double) STRETCHED_PER_OCTAVE);
    }
    for (int i = 0; i < HYPERBOLAS; i++) {
      k[i] = 0.3 * Math.pow(1.3, i);
    }
  }

  /** The time constant of an exponential, in s. */
  static double timeConstantSeconds(int exponential) {
    return Math.pow(2, exponential / (double) EXPONENTIALS_PER_OCTAVE);
  }

  /**
   * All shapes at a time; the array is the same each time.
   *
   * @param seconds t, 0 or above
   */
  double[] at(double seconds) {
    double root = Math.sqrt(seconds);
    fall(0, EXPONENTIALS, EXPONENTIALS_PER_OCTAVE, seconds);
    for (int i = FIRST_MEMBRANE; i < FIRST_STRETCHED; i++) {
      values[i] = 1 / (root * rate[i] + 1);
    }
    fall(FIRST_STRETCHED, ROOTS, STRETCHED_PER_OCTAVE, root);
    double steeper = Math.pow(seconds, STEEPER);
    fall(FIRST_STRETCHED + ROOTS, STRETCHED - ROOTS, STRETCHED_PER_OCTAVE, steeper);
    for (int i = 0; i < HYPERBOLAS; i++) {
      double x = k[i] / (seconds + k[i]);
      double half = Math.sqrt(x);
      values[FIRST_POWER + i] = x;
      values[FIRST_POWER + HYPERBOLAS + i] = half;
      values[FIRST_POWER + 2 * HYPERBOLAS + i] = x * half;
    }
    return values;
  }

  /** Exponentials of one family, the slowest octave by itself and the others by squaring. */
  private void fall(int first, int count, int perOctave, double x) {
    int slowest = first + count - perOctave;
    for (int i = slowest; i < first + count; i++) {
      values[i] = Math.exp(-x * rate[i]);
    }
    for (int i = slowest - 1; i >= first; i--) {
      double slower = values[i + perOctave];
      values[i] = slower * slower;
    }
  }
}
