package org.restpoint.stability.uncertainty;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * A budget as a table for a person: one line a source, with its estimate x, its standard
 * uncertainty u(x), the sensitivity coefficient c, its part of u(y) and its share of u²(y). Joint
 * sources show no single estimate.
 */
public final class BudgetTable {

  private static final List<String> HEAD =
      List.of("source", "x", "u(x)", "unit", "c", "u(y)", "share");

  private BudgetTable() {}

  /** The table, each line ended by a line feed, as wide as it needs. */
  public static String of(Budget budget) {
    List<List<String>> rows = new ArrayList<>();
    rows.add(HEAD);
    budget.contributions().forEach(part -> rows.add(row(part)));
    int[] widths = new int[HEAD.size()];
    for (List<String> row : rows) {
      for (int i = 0; i < widths.length; i++) {
        widths[i] = Math.max(widths[i], row.get(i).length());
      }
    }
    StringBuilder text = new StringBuilder();
    rows.forEach(row -> text.append(line(row, widths)).append('\n'));
    return text.append(budget.measurand())
        .append(" = ")
        .append(figure(budget.value()))
        .append(", u = ")
        .append(figure(budget.standardUncertainty()))
        .append(' ')
        .append(budget.unit())
        .append(" (k = 1)\n")
        .toString();
  }

  private static List<String> row(Contribution part) {
    String uncertainty = figure(part.standardUncertainty());
    String share = String.format(Locale.ROOT, "%.1f %%", part.sharePercent());
    if (part.source() instanceof Source.Quantity one) {
      return List.of(
          one.name(),
          figure(one.value()),
          figure(one.standardUncertainty()),
          one.unit(),
          figure(part.sensitivities().get(0)),
          uncertainty,
          share);
    }
    return List.of(part.source().name(), "", "", "", "", uncertainty, share);
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
