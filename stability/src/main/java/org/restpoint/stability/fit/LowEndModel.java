package org.restpoint.stability.fit;

/** The curve {@code a + s·τ·log10(c + b)} with the parameters a, s and ln b. */
final class LowEndModel implements CurveModel {

  private static final double LN_10 = Math.log(10);

  private final double[] concentrations;
  private final double[] tau;

  LowEndModel(double[] concentrations, double[] tau) {
    this.concentrations = concentrations;
    this.tau = tau;
  }

  @Override
  public double at(int point, double[] p) {
    return p[0] + p[1] * tau[point] * Math.log10(concentrations[point] + Math.exp(p[2]));
  }

  @Override
  public void derivatives(int point, double[] p, double[] derivatives) {
    double background = Math.exp(p[2]);
    double sum = concentrations[point] + background;
    derivatives[0] = 1;
    derivatives[1] = tau[point] * Math.log10(sum);
    derivatives[2] = p[1] * tau[point] / LN_10 * background / sum;
  }
}
