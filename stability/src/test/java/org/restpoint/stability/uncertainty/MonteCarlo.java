package org.restpoint.stability.uncertainty;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.DoubleStream;

/**
 * Propagation of distributions (JCGM 101:2008, clause 7): every source drawn from the normal
 * distribution that its estimate and covariance describe.
 *
 * @param mean mean of the measurand
 * @param standardDeviation its standard deviation
 * @param low lower end of the probabilistically symmetric 95.45 % interval
 * @param high its upper end
 */
public record MonteCarlo(double mean, double standardDeviation, double low, double high) {

  private static final double TAIL = (1 - 0.954499736) / 2;

  /** Draws {@code trials} times with a seed of its own. */
  public static MonteCarlo of(
      List<? extends Source> sources, MeasurementModel model, int trials, long seed) {
    Random random = new Random(seed);
    double[] results = new double[trials];
    for (int t = 0; t < trials; t++) {
      results[t] = model.measurand(draw(sources, random));
    }
    Arrays.sort(results);
    double mean = Arrays.stream(results).average().orElseThrow();
    double squares = Arrays.stream(results).map(r -> (r - mean) * (r - mean)).sum();
    return new MonteCarlo(
        mean,
        Math.sqrt(squares / (trials - 1)),
        results[(int) Math.round(TAIL * trials)],
        results[(int) Math.round((1 - TAIL) * trials) - 1]);
  }

  /** One draw of all sources' quantities. */
  public static double[] draw(List<? extends Source> sources, Random random) {
    int total = sources.stream().mapToInt(source -> source.estimates().size()).sum();
    double[] x = new double[total];
    int first = 0;
    for (Source source : sources) {
      int size = source.estimates().size();
      double[][] root = cholesky(source, size);
      double[] z = DoubleStream.generate(random::nextGaussian).limit(size).toArray();
      for (int i = 0; i < size; i++) {
        x[first + i] = source.estimates().get(i);
        for (int j = 0; j <= i; j++) {
          x[first + i] += root[i][j] * z[j];
        }
      }
      first += size;
    }
    return x;
  }

  /** Lower triangle L with V = L·Lᵀ; a quantity without variance of its own has a row of zeros. */
  private static double[][] cholesky(Source source, int size) {
    double[][] root = new double[size][size];
    for (int i = 0; i < size; i++) {
      for (int j = 0; j <= i; j++) {
        double rest = source.covariance(i, j);
        for (int k = 0; k < j; k++) {
          rest -= root[i][k] * root[j][k];
        }
        if (i == j) {
          root[i][i] = Math.sqrt(Math.max(0, rest));
        } else {
          root[i][j] = root[j][j] > 0 ? rest / root[j][j] : 0;
        }
      }
    }
    return root;
  }
}
