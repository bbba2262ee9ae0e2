package org.restpoint.stability.settle1;

import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * A column of a table of scores.
 *
 * @param title with its unit
 * @param figure the figure
 * @param decimals how many are shown
 */
record Column(String title, ToDoubleFunction<Scores> figure, int decimals) {

  /** Times and errors always stand together. */
  static final List<Column> ALL =
      List.of(
          new Column("mean, s", Scores::meanSeconds, 1),
          new Column("median, s", Scores::medianSeconds, 0),
          new Column("95 %, s", Scores::seconds95, 0),
          new Column("> 1 mV, %", scores -> 100 * scores.overOneMillivolt(), 2),
          new Column("> 0.5 mV, %", scores -> 100 * scores.overHalfMillivolt(), 2),
          new Column("never, %", scores -> 100 * scores.never(), 2),
          new Column("bias, mV", Scores::bias, 3),
          new Column("RMSE, mV", Scores::rootMeanSquare, 2),
          new Column("95 % error, mV", Scores::error95, 2),
          new Column("within 2u, %", scores -> 100 * scores.within2u(), 1));

  static List<String> titles() {
    return ALL.stream().map(Column::title).toList();
  }

  static List<String> of(Scores scores) {
    return ALL.stream()
        .map(it -> Spread.number(it.figure.applyAsDouble(scores), it.decimals))
        .toList();
  }

  static List<String> spreads(List<Scores> scores) {
    return ALL.stream().map(it -> it.spread(scores)).toList();
  }

  private String spread(List<Scores> scores) {
    return Spread.of(scores.stream().map(figure::applyAsDouble).toList()).words(decimals);
  }
}
