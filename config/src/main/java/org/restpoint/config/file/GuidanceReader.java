package org.restpoint.config.file;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.restpoint.config.station.ChosenTable;
import org.restpoint.config.station.TableSettings;

/** Reads which tables say what results mean, and for what kinds of samples. */
final class GuidanceReader {

  static final String GUIDANCE = "a mapping from a name for each table to the table";

  private static final String A_TABLE =
      "a mapping with table and for, e.g. { table: us-drinking-water, for: [well water] }";
  private static final String A_LIST = "a list of kinds of samples, e.g. [well water]";

  private final Vocabulary vocabulary;

  GuidanceReader(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
  }

  /** The tables by the name chosen for each; those that were refused are left out. */
  Map<String, ChosenTable> read(Entry entry) {
    Map<String, ChosenTable> tables = new LinkedHashMap<>();
    entry
        .section(GUIDANCE)
        .ifPresent(
            section -> {
              section
                  .children()
                  .forEach(
                      (name, child) -> {
                        StationReader.isName(name, child);
                        table(name, child).ifPresent(table -> tables.put(name, table));
                      });
              if (section.children().isEmpty()) {
                entry.refuse(GUIDANCE, "no table");
              }
            });
    return tables;
  }

  private Optional<ChosenTable> table(String name, Entry entry) {
    Optional<Section> section = entry.section(A_TABLE);
    if (section.isEmpty()) {
      return Optional.empty();
    }
    Section keys = section.get();
    boolean own =
        !keys.has("table") && OwnTableReader.KEYS.stream().anyMatch(k -> isOfOwn(keys, k));
    PublishedTableReader published = new PublishedTableReader(vocabulary);
    Optional<Boolean> ofSoil = own ? OwnTableReader.ofSoil(keys) : published.ofSoil(keys);
    List<String> kinds = keys.need("for", A_LIST).map(e -> kinds(e, ofSoil)).orElse(List.of());
    Optional<TableSettings> table =
        own ? new OwnTableReader(vocabulary).read(keys) : published.read(keys);
    return kinds.isEmpty()
        ? Optional.empty()
        : table.map(settings -> new ChosenTable(name, kinds, settings));
  }

  private static boolean isOfOwn(Section keys, String key) {
    return keys.has(key) && !PublishedTableReader.KEYS.contains(key);
  }

  private static List<String> kinds(Entry entry, Optional<Boolean> ofSoil) {
    List<String> kinds = new ArrayList<>();
    for (Entry item : entry.items(A_LIST)) {
      Optional<String> kind = item.word(ChosenTable.KINDS);
      if (kind.isEmpty()) {
        continue;
      }
      boolean soil = kind.get().equals(ChosenTable.SOIL);
      if (kinds.contains(kind.get())) {
        item.refuse("each kind once", kind.get() + " again", "take one of them out");
      } else if (ofSoil.isPresent() && soil != ofSoil.get()) {
        String of = ofSoil.get() ? "soil, as the table is of dry soil" : waters();
        item.refuse(of, kind.get());
      } else {
        kinds.add(kind.get());
      }
    }
    return kinds;
  }

  private static String waters() {
    return "one of "
        + String.join(", ", ChosenTable.KINDS.subList(1, ChosenTable.KINDS.size()))
        + ", as the table is of water";
  }
}
