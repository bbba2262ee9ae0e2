package org.restpoint.stability.addition;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.restpoint.stability.fit.WeightedLine;
import org.restpoint.stability.uncertainty.Budget;
import org.restpoint.stability.uncertainty.Source;
import org.restpoint.stability.uncertainty.Source.Quantity;

/**
 * The line of a {@link GranPlot} as a measurement model: inputs are the vessel, c_s, S, the n
 * potentials, the n added volumes and the blank, where there is one.
 *
 * @param plot what was read
 * @param slope S
 * @param blank what is taken off
 */
record GranFit(GranPlot plot, Quantity slope, Optional<Quantity> blank) {

  /** A hundred decades: far from any solution, and its square is still a number. */
  private static final double MOST_APART_BELOW = 1e-100;

  /** The line at the estimates. */
  WeightedLine line() {
    return line(
        plot.sample().totalMillilitres(),
        slope.value(),
        plot.points().stream().mapToDouble(GranPoint::millivolts).toArray(),
        plot.points().stream().mapToDouble(GranPoint::addedMillilitres).toArray());
  }

  /** Whether every ordinate is above zero and finite, and so are the weights of all. */
  boolean holdsNumbers() {
    return plot.points().stream()
        .mapToDouble(
            point ->
                PotentialStep.ratio(
                    plot.points().get(0).millivolts(), point.millivolts(), slope.value()))
        .allMatch(ratio -> ratio > MOST_APART_BELOW && ratio < 1 / MOST_APART_BELOW);
  }

  /** How many times the concentration rose from the least addition to the largest. */
  double rise() {
    Comparator<GranPoint> byVolume = Comparator.comparingDouble(GranPoint::addedMillilitres);
    GranPoint least = plot.points().stream().min(byVolume).orElseThrow();
    GranPoint most = plot.points().stream().max(byVolume).orElseThrow();
    return PotentialStep.ratio(least.millivolts(), most.millivolts(), slope.value());
  }

  /** The concentration less the blank. */
  Budget budget(double potentialVarianceFactor) {
    List<Source> sources = new ArrayList<>(plot.sample().sources().toList());
    sources.add(plot.standardConcentration());
    sources.add(slope);
    sources.add(plot.potentials(potentialVarianceFactor));
    sources.add(plot.volumes());
    blank.ifPresent(sources::add);
    return Budget.of(
        "concentration", plot.standardConcentration().unit(), sources, this::concentration);
  }

  private double concentration(double[] x) {
    int first = plot.sample().size();
    int n = plot.points().size();
    WeightedLine line =
        line(
            plot.sample().total(x),
            x[first + 1],
            Arrays.copyOfRange(x, first + 2, first + 2 + n),
            Arrays.copyOfRange(x, first + 2 + n, first + 2 + 2 * n));
    double found = line.estimate().intercept() / line.estimate().slope() * x[first] / x[0];
    return blank.isPresent() ? found - x[x.length - 1] : found;
  }

  private WeightedLine line(
      double vessel, double slopeMillivolts, double[] millivolts, double[] added) {
    double reference = plot.points().get(0).millivolts();
    double[] amounts = new double[added.length];
    double[] deviations = new double[added.length];
    for (int i = 0; i < added.length; i++) {
      amounts[i] =
          (vessel + added[i]) * PotentialStep.ratio(reference, millivolts[i], slopeMillivolts);
      deviations[i] =
          amounts[i]
              * Math.log(10)
              * plot.points().get(i).standardUncertaintyMillivolts()
              / Math.abs(slopeMillivolts);
    }
    return WeightedLine.through(added, amounts, deviations);
  }
}
