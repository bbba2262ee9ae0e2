package org.restpoint.stability.settle1;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import org.restpoint.stability.settle1.Svg.Anchor;
import org.restpoint.stability.settle1.Svg.Point;

/** Readings of a few curves, and what some rules published of them. */
final class TracePicture {

  private static final double LEFT = 60;
  private static final double PLOT = Svg.WIDTH - LEFT - 20;
  private static final String PALE = "#f0f0f0";

  private final Run run;
  private final List<Row> rows;

  TracePicture(Run run, List<Row> rows) {
    this.run = run;
    this.rows = rows;
  }

  /** A curve of each model that creeps for a while, and what was published of it when. */
  String draw() {
    Svg svg = new Svg();
    double top = 30 + Legend.ROW * (rows.size() + 2);
    Legend legend = new Legend(svg, new Point(LEFT, 20));
    legend.line("readings less the truth; within 1 mV of it on grey", Look.READINGS);
    for (int i = 0; i < rows.size(); i++) {
      legend.mark("published by " + rows.get(i).candidate().name(), Look.of(i));
    }
    legend.words("a rule without a mark had not settled after 600 s");
    double wide = (PLOT - LEFT) / 2;
    double tall = 150;
    int panel = 0;
    for (Model model : Model.values()) {
      int storey = panel / 2;
      double left = LEFT + panel % 2 * (wide + LEFT);
      Point corner = new Point(left, top + storey * (tall + 75));
      svg.words(new Point(left + wide / 2, corner.y() - 6), Anchor.MIDDLE, model.words());
      Chart chart =
          new Chart(
              svg,
              corner,
              wide,
              tall,
              new Chart.Axis("time since the step, s", 0, 600, 100),
              new Chart.Axis("mV", -3, 3, 1));
      chart.band(-Scores.FALSE_MILLIVOLTS, Scores.FALSE_MILLIVOLTS, PALE);
      chart.begin("panel" + panel);
      OptionalInt example = example(model);
      if (example.isPresent()) {
        trace(chart, example.getAsInt());
      }
      chart.end();
      panel++;
    }
    return svg.picture(
        (int) (top + 3 * (tall + 75) - 20), "A curve of each model and the decisions");
  }

  /** The first curve that still creeps after half a minute and is near its rest after five. */
  private OptionalInt example(Model model) {
    List<Curve> set = run.sets().reports().get(0);
    return IntStream.range(0, set.size())
        .filter(i -> set.get(i).model() == model)
        .filter(i -> toGo(set.get(i), 30) > Scores.FALSE_MILLIVOLTS)
        .filter(i -> toGo(set.get(i), 300) < Scores.FALSE_MILLIVOLTS)
        .findFirst();
  }

  private static double toGo(Curve curve, double seconds) {
    double response = curve.response().millivoltsAt(curve.step(), seconds);
    return Math.abs(response - curve.restingMillivolts());
  }

  private void trace(Chart chart, int found) {
    Curve curve = run.sets().reports().get(0).get(found);
    List<Point> readings = new ArrayList<>();
    for (int t = 0; t < curve.trace().seconds(); t++) {
      readings.add(new Point(t, curve.trace().millivoltsAt(t) - curve.truthAt(t)));
    }
    chart.line(readings, Look.READINGS);
    for (int i = 0; i < rows.size(); i++) {
      if (rows.get(i).decisions().get(0).get(found) instanceof Decision.Settled settled) {
        chart.mark(new Point(settled.seconds(), settled.errorMillivolts()), Look.of(i));
      }
    }
  }
}
