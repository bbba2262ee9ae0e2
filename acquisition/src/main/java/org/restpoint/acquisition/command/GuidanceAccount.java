package org.restpoint.acquisition.command;

import java.util.ArrayList;
import java.util.List;
import org.restpoint.acquisition.meaning.GuidanceTerms;
import org.restpoint.config.station.ChosenTable;
import org.restpoint.config.station.Station;
import org.restpoint.stability.guidance.GuidanceTable;

/** Says back which tables say what results mean, for what, by which source and within what. */
final class GuidanceAccount {

  private static final String INDENT = "            ";

  private GuidanceAccount() {}

  static List<String> of(Station station) {
    List<String> lines = new ArrayList<>();
    for (ChosenTable chosen : station.guidance().values()) {
      GuidanceTable table = GuidanceTerms.table(chosen.table());
      lines.add(
          "guidance  %s: %s; for samples of %s"
              .formatted(chosen.name(), table.title(), String.join(", ", chosen.kinds())));
      lines.add(INDENT + "source: " + table.source());
      lines.add(INDENT + "holds for: " + table.scope().text());
    }
    return lines;
  }
}
