package org.restpoint.acquisition.listen;

import java.util.ArrayList;
import java.util.List;
import org.restpoint.adapters.quantity.Meaning;

/**
 * The section of one probe. What nothing that was heard can say, the ion above all, stands in
 * comments for a person to fill in.
 */
final class ProbeText {

  private ProbeText() {}

  /**
   * The lines of a probe under {@code probes:}.
   *
   * @param name its name
   * @param meaning what its numbers mean
   * @param kind the kind of link
   * @param keys the keys of the link, one a line
   */
  static List<String> of(String name, Meaning meaning, String kind, List<String> keys) {
    List<String> lines = new ArrayList<>();
    lines.add("  %s:    # a name of your own".formatted(name));
    boolean electrode = meaning.potential().isPresent();
    if (electrode) {
      lines.add(
          "    # analyte: nitrate    # its ion: nitrate, ammonium, potassium, calcium, chloride, fluoride ...");
      lines.add("    # basis: as-N    # for nitrate and ammonium: as-N or as-ion");
    } else {
      lines.add("    measures: temperature");
    }
    lines.add("    link:");
    lines.add("      %s:".formatted(kind));
    keys.forEach(key -> lines.add("        " + key));
    if (electrode) {
      lines.add(
          meaning.temperature().isPresent()
              ? "    temperature: { from: reading }"
              : "    # temperature: { fixed: 22.0 Cel, uncertainty: 1 K }    # none comes: measure it, or name a thermometer's probe");
      lines.add("    # calibrate: { standards: [low, high] }    # the names of your standards");
    }
    return lines;
  }
}
