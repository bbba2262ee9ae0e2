package org.restpoint.stability.uncertainty;

import java.util.List;

/**
 * Where uncertainty comes from: an input quantity of a measurement, or several that are known only
 * together.
 */
public sealed interface Source {

  /** What a person calls it. */
  String name();

  /** The estimates of its quantities, in order. */
  List<Double> estimates();

  /** Covariance of two of its quantities; the variance where both are the same. */
  double covariance(int row, int column);

  /** Degrees of freedom of its uncertainty; infinite where it is taken as known. */
  double degreesOfFreedom();

  /**
   * One quantity, independent of all others.
   *
   * @param name what a person calls it
   * @param unit its unit, a UCUM code; {@code 1} for a ratio
   * @param value the estimate, finite
   * @param standardUncertainty u, k = 1, 0 or above
   * @param degreesOfFreedom of u, above zero; infinite where u is taken as known
   */
  record Quantity(
      String name, String unit, double value, double standardUncertainty, double degreesOfFreedom)
      implements Source {

    public Quantity {
      if (!Double.isFinite(value)) {
        throw new IllegalArgumentException(name + " is a finite number, not " + value);
      }
      if (!(standardUncertainty >= 0) || Double.isInfinite(standardUncertainty)) {
        throw new IllegalArgumentException(
            "the uncertainty of " + name + " is 0 or above, not " + standardUncertainty);
      }
      if (!(degreesOfFreedom > 0)) {
        throw new IllegalArgumentException("degrees of freedom are above zero");
      }
    }

    /** A quantity whose standard uncertainty is known. */
    public static Quantity of(String name, String unit, double value, double standardUncertainty) {
      return new Quantity(name, unit, value, standardUncertainty, Double.POSITIVE_INFINITY);
    }

    /** A quantity that lies anywhere within ± a: u = a/√3 (JCGM 100:2008, 4.3.7). */
    public static Quantity within(String name, String unit, double value, double halfWidth) {
      return of(name, unit, value, halfWidth / Math.sqrt(3));
    }

    /** A quantity known so well that its uncertainty counts for nothing. */
    public static Quantity exactly(String name, String unit, double value) {
      return of(name, unit, value, 0);
    }

    @Override
    public List<Double> estimates() {
      return List.of(value);
    }

    @Override
    public double covariance(int row, int column) {
      return standardUncertainty * standardUncertainty;
    }
  }

  /**
   * Quantities that were found together, so that their errors go together: the parameters of a
   * calibration.
   *
   * @param name what a person calls them
   * @param estimates the estimates, at least one
   * @param covariances their covariance matrix, row by row, symmetric
   * @param degreesOfFreedom of the covariances, above zero; infinite where they are taken as known
   */
  record Joint(
      String name, List<Double> estimates, List<List<Double>> covariances, double degreesOfFreedom)
      implements Source {

    public Joint {
      estimates = List.copyOf(estimates);
      covariances = covariances.stream().map(List::copyOf).toList();
      int size = estimates.size();
      if (size == 0
          || covariances.size() != size
          || covariances.stream().anyMatch(row -> row.size() != size)) {
        throw new IllegalArgumentException("n quantities have n · n covariances, n above 0");
      }
      if (!(degreesOfFreedom > 0)) {
        throw new IllegalArgumentException("degrees of freedom are above zero");
      }
      for (int i = 0; i < size; i++) {
        if (!(covariances.get(i).get(i) >= 0)) {
          throw new IllegalArgumentException("a variance is 0 or above");
        }
        for (int j = 0; j < size; j++) {
          if (!covariances.get(i).get(j).equals(covariances.get(j).get(i))
              || !Double.isFinite(covariances.get(i).get(j))) {
            throw new IllegalArgumentException("covariances are finite and symmetric");
          }
        }
      }
    }

    /** Quantities whose covariances are taken as known. */
    public static Joint of(String name, List<Double> estimates, List<List<Double>> covariances) {
      return new Joint(name, estimates, covariances, Double.POSITIVE_INFINITY);
    }

    @Override
    public double covariance(int row, int column) {
      return covariances.get(row).get(column);
    }
  }
}
