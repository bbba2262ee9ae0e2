package org.restpoint.acquisition.workday;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * What has to come of a sample by {@code workday/expected.csv}, and what came of it, in the same
 * words: a number that is within its limits is told as the table tells it.
 */
final class SampleRow {

  /** As the header of the table works it out. */
  private static final double READS_WITHIN = 0.005;

  /** What the reading itself adds to the uncertainty of the preparation, in percentage points. */
  private static final double READING_ADDS = 0.5;

  /** Pounds of nitrogen an acre for each mg/kg. */
  private static final double POUNDS = 8;

  private final Table.Row row;

  private SampleRow(Table.Row row) {
    this.row = row;
  }

  /** The table. */
  static List<SampleRow> all() {
    return Table.rows("expected.csv").stream().map(SampleRow::new).toList();
  }

  /** Whether nothing is wrong with it, so that the result has to cover what is really there. */
  boolean isSound() {
    return cell("outcome").equals("settled") && cell("reads").equals(cell("really"));
  }

  /** What is really there, in the unit that is reported. */
  double really() {
    return number("really");
  }

  /** What has to come of it. */
  String expected() {
    return String.join(" | ", row.cells().values());
  }

  /** What came of it. */
  String found(JsonNode result) {
    List<String> found =
        new ArrayList<>(List.of(result.at("/sample/number").asText(), cell("vessel")));
    JsonNode reported = result.path("reported");
    found.add(near("factor", factor(result), 0.0005 * factor(result)));
    found.add(cell("really"));
    double reads = reported.path("value").asDouble(Double.NaN);
    found.add(near("reads", reads, READS_WITHIN * reads));
    found.add(uncertainty(100 * reported.path("uncertainty").asDouble() / reads));
    found.add(result.path("outcome").asText());
    List<String> flags = new ArrayList<>();
    result.path("flags").forEach(flag -> flags.add(flag.asText()));
    found.add(String.join(" ", flags));
    JsonNode guidance = result.at("/guidance/0");
    found.add(means(guidance.path("meaning").asText()));
    double rate = guidance.at("/rate/value").asDouble(Double.NaN);
    found.add(near("rate", rate, POUNDS * READS_WITHIN * reads));
    return String.join(" | ", found);
  }

  private static double factor(JsonNode result) {
    JsonNode figures = result.at("/preparation/figures");
    return figures.path(figures.size() - 1).path("value").asDouble(Double.NaN);
  }

  private String uncertainty(double percent) {
    if (cell("U%").isEmpty()) {
      return "";
    }
    double over = percent - number("U%");
    return over > -0.1 && over < READING_ADDS ? cell("U%") : word(percent);
  }

  private String means(String meaning) {
    return meaning.contains(cell("means")) ? cell("means") : meaning;
  }

  private String near(String column, double found, double within) {
    if (Double.isNaN(found)) {
      return "";
    }
    return !cell(column).isEmpty() && Math.abs(found - number(column)) <= within
        ? cell(column)
        : word(found);
  }

  private static String word(double number) {
    return String.format(Locale.ROOT, "%.4g", number);
  }

  private double number(String column) {
    return Double.parseDouble(cell(column));
  }

  private String cell(String column) {
    return row.cell(column);
  }
}
