package org.restpoint.stability.fit;

import java.util.Optional;

/**
 * Least squares of a few columns by Householder's reflections, each column scaled to length 1.
 *
 * <p>Reference: G. H. Golub, Numerical methods for solving linear least squares problems, Numer.
 * Math. 7 (1965) 206, doi 10.1007/BF01436075.
 */
final class Orthogonal {

  /** A scaled column with less than this of its own is a sum of the others, to rounding. */
  private static final double NO_OWN = 1e-13;

  private final double[][] factors;
  private final double[] diagonal;
  private final double[] scales;

  private Orthogonal(double[][] factors, double[] diagonal, double[] scales) {
    this.factors = factors;
    this.diagonal = diagonal;
    this.scales = scales;
  }

  /** Decomposes rows × columns; empty where the columns depend on each other. */
  static Optional<Orthogonal> of(double[][] matrix) {
    int rows = matrix.length;
    int columns = matrix[0].length;
    double[] scales = lengths(matrix);
    double[][] a = new double[rows][columns];
    for (int j = 0; j < columns; j++) {
      if (!(scales[j] > 0) || Double.isInfinite(scales[j])) {
        return Optional.empty();
      }
      for (int i = 0; i < rows; i++) {
        a[i][j] = matrix[i][j] / scales[j];
      }
    }
    double[] diagonal = new double[columns];
    for (int k = 0; k < columns; k++) {
      double norm = 0;
      for (int i = k; i < rows; i++) {
        norm = Math.hypot(norm, a[i][k]);
      }
      if (!(norm > NO_OWN)) {
        return Optional.empty();
      }
      norm = a[k][k] < 0 ? -norm : norm;
      for (int i = k; i < rows; i++) {
        a[i][k] /= norm;
      }
      a[k][k] += 1;
      for (int j = k + 1; j < columns; j++) {
        double dot = 0;
        for (int i = k; i < rows; i++) {
          dot += a[i][k] * a[i][j];
        }
        dot /= a[k][k];
        for (int i = k; i < rows; i++) {
          a[i][j] -= dot * a[i][k];
        }
      }
      diagonal[k] = -norm;
    }
    return Optional.of(new Orthogonal(a, diagonal, scales));
  }

  /** Lengths of the columns. */
  static double[] lengths(double[][] matrix) {
    double[] lengths = new double[matrix[0].length];
    for (double[] row : matrix) {
      for (int j = 0; j < lengths.length; j++) {
        lengths[j] = Math.hypot(lengths[j], row[j]);
      }
    }
    return lengths;
  }

  /** The factors of the columns that come closest to {@code right}. */
  double[] solve(double[] right) {
    double[] b = right.clone();
    int columns = diagonal.length;
    for (int k = 0; k < columns; k++) {
      double dot = 0;
      for (int i = k; i < b.length; i++) {
        dot += factors[i][k] * b[i];
      }
      dot /= factors[k][k];
      for (int i = k; i < b.length; i++) {
        b[i] -= dot * factors[i][k];
      }
    }
    double[] solution = new double[columns];
    for (int k = columns - 1; k >= 0; k--) {
      double value = b[k];
      for (int j = k + 1; j < columns; j++) {
        value -= factors[k][j] * solution[j];
      }
      solution[k] = value / diagonal[k];
    }
    for (int k = 0; k < columns; k++) {
      solution[k] /= scales[k];
    }
    return solution;
  }

  /** The pseudo-inverse, columns × rows: what {@link #solve} makes of each unit vector. */
  double[][] inverse() {
    int rows = factors.length;
    double[][] inverse = new double[diagonal.length][rows];
    for (int i = 0; i < rows; i++) {
      double[] unit = new double[rows];
      unit[i] = 1;
      double[] column = solve(unit);
      for (int k = 0; k < column.length; k++) {
        inverse[k][i] = column[k];
      }
    }
    return inverse;
  }
}
