package org.restpoint.acquisition.slip;

import java.util.List;
import org.restpoint.acquisition.event.Guidance;
import org.restpoint.acquisition.event.Result;

/** What the number means by the tables that were chosen; nothing where none was. */
final class MeaningSection {

  private MeaningSection() {}

  static Slip.Section of(Result result) {
    Parts parts = new Parts("What it means");
    List<Guidance> tables = result.guidance().orElse(List.of());
    tables.forEach(table -> tell(parts, table));
    boolean aSample = result.verification().isEmpty() && NumberSection.number(result).isPresent();
    if (tables.isEmpty() && aSample) {
      parts.sentence(
          "No table was chosen. Ask your local extension service what this number means for this"
              + " field or this well");
    }
    return parts.section();
  }

  private static void tell(Parts parts, Guidance table) {
    parts.fact("Table", table.title()).sentence(table.meaning());
    // The meaning tells the rate; how it was reckoned stands beside it.
    table
        .rate()
        .filter(rate -> rate.value() > 0)
        .ifPresent(rate -> parts.fact("Reckoned", rate.formula()));
    parts.fact("Holds for", table.scope()).fact("Source", table.source()).sentence(table.caution());
  }
}
