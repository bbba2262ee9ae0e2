package org.restpoint.stability.uncertainty;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/**
 * A budget as a table for a person: one line a source, with its estimate x, its standard
 * uncertainty u(x), the sensitivity coefficient c, its part of u(y) and its share of u²(y). Joint
 * sources show no single estimate.
 *
 * @param measurand what was measured
 * @param value y
 * @param standardUncertainty u(y), k = 1
 * @param unit the unit of both
 * @param lines the sources
 */
public record BudgetTable(
    String measurand,
    double value,
    double standardUncertainty,
    String unit,
    List<BudgetLine> lines) {

  private static final List<String> HEAD =
      List.of("source", "x", "u(x)", "unit", "c", "u(y)", "share");

  public BudgetTable {
    lines = List.copyOf(lines);
  }

  /** The table of a budget. */
  public static BudgetTable of(Budget budget) {
    return new BudgetTable(
        budget.measurand(),
        budget.value(),
        budget.standardUncertainty(),
        budget.unit(),
        budget.lines());
  }

  /** The text, each line ended by a line feed, as wide as it needs. */
  public String text() {
    List<List<String>> rows = new ArrayList<>();
    rows.add(HEAD);
    lines.forEach(part -> rows.add(row(part)));
    int[] widths = new int[HEAD.size()];
    for (List<String> row : rows) {
      for (int i = 0; i < widths.length; i++) {
        widths[i] = Math.max(widths[i], row.get(i).length());
      }
    }
    StringBuilder text = new StringBuilder();
    rows.forEach(row -> text.append(line(row, widths)).append('\n'));
    return text.append(measurand)
        .append(" = ")
        .append(figure(value))
        .append(", u = ")
        .append(figure(standardUncertainty))
        .append(' ')
        .append(unit)
        .append(" (k = 1)\n")
        .toString();
  }

  private static List<String> row(BudgetLine part) {
    return List.of(
        part.source(),
        figure(part.estimate()),
        figure(part.standardUncertainty()),
        part.unit().orElse(""),
        figure(part.sensitivity()),
        figure(part.contribution()),
        String.format(Locale.ROOT, "%.1f %%", part.sharePercent()));
  }

  private static String figure(OptionalDouble number) {
    return number.isPresent() ? figure(number.getAsDouble()) : "";
  }

  /** Five significant digits: more than any uncertainty here has. */
  private static String figure(double number) {
    return String.format(Locale.ROOT, "%.5g", number);
  }

  /** The first column is of words and stands left, the unit too; figures stand right. */
  private static String line(List<String> row, int[] widths) {
    StringBuilder line = new StringBuilder();
    for (int i = 0; i < widths.length; i++) {
      boolean words = i == 0 || i == 3;
      line.append(i == 0 ? "" : "  ")
          .append(
              String.format(Locale.ROOT, "%" + (words ? "-" : "") + widths[i] + "s", row.get(i)));
    }
    return line.toString().stripTrailing();
  }
}
