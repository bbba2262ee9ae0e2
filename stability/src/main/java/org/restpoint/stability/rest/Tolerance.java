package org.restpoint.stability.rest;

/**
 * How far apart readings may lie and still count as alike.
 *
 * <p>A change of the concentration by p % moves the potential by {@code w = |S|·log10(1 + p/100)}
 * (Nernst), S the electrode's slope in mV/decade: 2 % are 0.51 mV at 59.16 mV/decade.
 */
public sealed interface Tolerance {

  /**
   * The tolerance of an electrode.
   *
   * @param slopeMillivoltsPerDecade its slope, of either sign, not 0
   * @return w in mV, 0 or above
   */
  double onSlope(double slopeMillivoltsPerDecade);

  /** The tolerance in a few words: {@code 0.1 mV}, {@code 2 %}. */
  String describe();

  private static void checkSlope(double slopeMillivoltsPerDecade) {
    if (!Double.isFinite(slopeMillivoltsPerDecade) || slopeMillivoltsPerDecade == 0) {
      throw new IllegalArgumentException(
          "a slope is a finite number of mV/decade and not 0, not " + slopeMillivoltsPerDecade);
    }
  }

  /**
   * So many millivolts, whatever the electrode.
   *
   * @param millivolts w, 0 or above
   */
  record Millivolts(double millivolts) implements Tolerance {

    public Millivolts {
      if (!(millivolts >= 0) || Double.isInfinite(millivolts)) {
        throw new IllegalArgumentException("a tolerance is 0 mV or above, not " + millivolts);
      }
    }

    @Override
    public double onSlope(double slopeMillivoltsPerDecade) {
      checkSlope(slopeMillivoltsPerDecade);
      return millivolts;
    }

    @Override
    public String describe() {
      return Setting.number(millivolts) + " mV";
    }
  }

  /**
   * So many per cent of the concentration.
   *
   * @param percent p, 0 or above
   */
  record ConcentrationPercent(double percent) implements Tolerance {

    public ConcentrationPercent {
      if (!(percent >= 0) || Double.isInfinite(percent)) {
        throw new IllegalArgumentException("a tolerance is 0 % or above, not " + percent);
      }
    }

    @Override
    public double onSlope(double slopeMillivoltsPerDecade) {
      checkSlope(slopeMillivoltsPerDecade);
      return Math.abs(slopeMillivoltsPerDecade) * Math.log1p(percent / 100) / Math.log(10);
    }

    @Override
    public String describe() {
      return Setting.number(percent) + " %";
    }
  }
}
