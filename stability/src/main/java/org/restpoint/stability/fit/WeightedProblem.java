package org.restpoint.stability.fit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Residuals and derivatives divided by the uncertainties. */
final class WeightedProblem {

  private final CurveModel model;
  private final double[] y;
  private final double[] u;

  WeightedProblem(CurveModel model, double[] y, double[] u) {
    this.model = model;
    this.y = y;
    this.u = u;
  }

  double[] residuals(double[] p) {
    double[] r = new double[y.length];
    for (int i = 0; i < r.length; i++) {
      r[i] = (y[i] - model.at(i, p)) / u[i];
    }
    return r;
  }

  double[][] jacobian(double[] p) {
    double[][] j = new double[y.length][p.length];
    for (int i = 0; i < y.length; i++) {
      model.derivatives(i, p, j[i]);
      for (int k = 0; k < p.length; k++) {
        j[i][k] /= u[i];
      }
    }
    return j;
  }

  static double square(double[] values) {
    double sum = 0;
    for (double value : values) {
      sum += value * value;
    }
    return sum;
  }

  CurveFitOutcome.Converged converged(double[] p, Orthogonal j, int steps) {
    double[][] inverse = j.inverse();
    List<Double> entries = new ArrayList<>();
    List<List<Double>> sensitivities = new ArrayList<>();
    for (double[] row : inverse) {
      for (double[] column : inverse) {
        double dot = 0;
        for (int i = 0; i < y.length; i++) {
          dot += row[i] * column[i];
        }
        entries.add(dot);
      }
      List<Double> byPoint = new ArrayList<>();
      for (int i = 0; i < y.length; i++) {
        byPoint.add(row[i] / u[i]);
      }
      sensitivities.add(List.copyOf(byPoint));
    }
    double[] r = residuals(p);
    List<Double> residuals = new ArrayList<>();
    for (int i = 0; i < y.length; i++) {
      residuals.add(r[i] * u[i]);
    }
    return new CurveFitOutcome.Converged(
        Arrays.stream(p).boxed().toList(),
        new Covariance(p.length, entries),
        residuals,
        sensitivities,
        new Consistency(square(r), y.length - p.length),
        steps);
  }
}
