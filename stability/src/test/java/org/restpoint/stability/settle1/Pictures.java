package org.restpoint.stability.settle1;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.restpoint.stability.settle1.Svg.Point;

/** A run in pictures. */
final class Pictures {

  private static final double LEFT = 60;
  private static final double PLOT = Svg.WIDTH - LEFT - 20;
  private static final double TALL = 340;
  private static final int UNDER = 50;

  private final Run run;

  Pictures(Run run) {
    this.run = run;
  }

  /** Writes them into a folder, which is made where it is missing. */
  void write(Path folder) throws IOException {
    Files.createDirectories(folder);
    Files.writeString(folder.resolve("time-against-false-settles.svg"), timeAgainstFalseSettles());
    Files.writeString(folder.resolve("errors.svg"), errors());
    Files.writeString(folder.resolve("traces.svg"), new TracePicture(run, shown()).draw());
  }

  /** What each family can reach, and where the candidates and the customary settings stand. */
  String timeAgainstFalseSettles() {
    Svg svg = new Svg();
    List<Row> rows = new ArrayList<>(run.candidates());
    rows.addAll(run.fixed());
    double top = 20 + Legend.ROW * (run.lines().size() + rows.size());
    Legend legend = new Legend(svg, new Point(LEFT, 20));
    Chart chart =
        new Chart(
                svg,
                new Point(LEFT, top),
                PLOT,
                TALL,
                new Chart.Axis("false settles (error above 1 mV), % of all curves", 0, 30, 5),
                new Chart.Axis("mean time to the decision, s", 0, 600, 100))
            .begin("times");
    int series = 0;
    for (Family family : run.lines()) {
      chart.line(stairs(new Envelope(family.mean()).steps()), Look.of(series++));
    }
    for (Row row : rows) {
      place(chart, row, Look.of(series++));
    }
    chart.end();
    series = 0;
    for (Family family : run.lines()) {
      legend.line("soonest settings of " + family.name(), Look.of(series++));
    }
    for (Row row : rows) {
      legend.mark(row.candidate().name(), Look.of(series++));
    }
    return svg.picture((int) (top + TALL + UNDER), "Mean time to the decision by false settles");
  }

  private static List<Point> stairs(List<Swept> steps) {
    List<Point> points = new ArrayList<>();
    for (int i = 0; i < steps.size(); i++) {
      double percent = 100 * steps.get(i).overOneMillivolt();
      if (i > 0) {
        points.add(new Point(percent, steps.get(i - 1).meanSeconds()));
      }
      points.add(new Point(percent, steps.get(i).meanSeconds()));
    }
    return points;
  }

  private static void place(Chart chart, Row row, Look look) {
    List<Scores> scores = row.scores();
    double[] percents = scores.stream().mapToDouble(it -> 100 * it.overOneMillivolt()).toArray();
    double[] seconds = scores.stream().mapToDouble(Scores::meanSeconds).toArray();
    Extent across = Extent.of(percents);
    Extent up = Extent.of(seconds);
    Look thin = new Look(look.colour(), "none", 1, look.shape());
    chart.line(
        List.of(new Point(across.low(), up.mean()), new Point(across.high(), up.mean())), thin);
    chart.line(
        List.of(new Point(across.mean(), up.low()), new Point(across.mean(), up.high())), thin);
    chart.mark(new Point(across.mean(), up.mean()), look);
  }

  /** The least, the mean and the largest over the seeds. */
  private record Extent(double low, double mean, double high) {

    static Extent of(double... values) {
      double low = Double.POSITIVE_INFINITY;
      double high = Double.NEGATIVE_INFINITY;
      double sum = 0;
      for (double value : values) {
        low = Math.min(low, value);
        high = Math.max(high, value);
        sum += value;
      }
      return new Extent(low, sum / values.length, high);
    }
  }

  /** How many curves each rule settles on with no more than an error. */
  String errors() {
    Svg svg = new Svg();
    List<Row> rows = shown();
    double top = 20 + Legend.ROW * rows.size();
    Legend legend = new Legend(svg, new Point(LEFT, 20));
    Chart chart =
        new Chart(
                svg,
                new Point(LEFT, top),
                PLOT,
                TALL,
                new Chart.Axis("size of the error, mV", 0, 2, 0.5),
                new Chart.Axis("settled with no larger error, % of all curves", 0, 100, 20))
            .begin("errors");
    for (int i = 0; i < rows.size(); i++) {
      chart.line(cumulated(rows.get(i).all()), Look.of(i));
    }
    chart.end();
    for (int i = 0; i < rows.size(); i++) {
      Row row = rows.get(i);
      double seconds = Spread.of(row.scores().stream().map(Scores::meanSeconds).toList()).mean();
      String mean = " (mean " + Spread.number(seconds, 0) + " s)";
      legend.line(row.candidate().name() + mean, Look.of(i));
    }
    return svg.picture((int) (top + TALL + UNDER), "How large the errors are");
  }

  private static List<Point> cumulated(List<Decision> decisions) {
    List<Point> points = new ArrayList<>();
    for (int i = 0; i <= 200; i++) {
      double most = i / 100.0;
      long within =
          decisions.stream()
              .filter(Decision.Settled.class::isInstance)
              .map(Decision.Settled.class::cast)
              .filter(settled -> Math.abs(settled.errorMillivolts()) <= most)
              .count();
      points.add(new Point(most, 100.0 * within / decisions.size()));
    }
    return points;
  }

  /** The candidates, the tuned setting of each family at the middle aim, the customary one. */
  private List<Row> shown() {
    List<Row> rows = new ArrayList<>(run.candidates());
    for (Family family : run.families()) {
      List<Row> tuned =
          run.tuned().stream()
              .filter(it -> it.family().equals(family.name()))
              .flatMap(it -> it.row().stream())
              .toList();
      if (!tuned.isEmpty()) {
        rows.add(tuned.get(tuned.size() / 2));
      }
    }
    rows.add(run.fixed().get(0));
    return rows;
  }
}
