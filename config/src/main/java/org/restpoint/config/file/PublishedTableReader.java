package org.restpoint.config.file;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.restpoint.config.station.TableSettings;
import org.restpoint.config.station.TableSettings.BulkDensity;
import org.restpoint.config.station.TableSettings.Critical;
import org.restpoint.config.station.TableSettings.Published;

/** Reads the choice of a guidance table that comes with the program. */
final class PublishedTableReader {

  /** The keys of it. */
  static final List<String> KEYS =
      List.of("table", "for", "critical", "because", "bulk-density", "uncertainty");

  private static final String OR_OWN = ", or a table of your own with title, source and bands";

  /** Published critical numbers are 15 to 30 mg/kg; nobody has one ten times that. */
  private static final Allowed CRITICAL =
      Allowed.above(Measure.CONTENT_OF_SOIL, "0 mg/kg", "200 mg/kg");

  /** From peat to rock. */
  private static final Allowed DENSITY =
      Allowed.from(Measure.BULK_DENSITY, "0.1 g/cm3", "2.7 g/cm3");

  private static final Allowed SHARE = Allowed.from(Measure.SHARE, "0 %", "100 %");

  /** Our choice: soils of one field commonly differ by as much. */
  private static final double USUAL_UNCERTAINTY = 0.1;

  private final Vocabulary vocabulary;

  PublishedTableReader(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
  }

  /** Whether the table named is of soil; empty where it is not known. Nothing is told. */
  Optional<Boolean> ofSoil(Section keys) {
    return keys.find("table")
        .flatMap(Entry::quietText)
        .flatMap(this::known)
        .map(KnownTable::ofSoil);
  }

  private Optional<KnownTable> known(String name) {
    return Optional.ofNullable(vocabulary.tables().get(name));
  }

  Optional<TableSettings> read(Section keys) {
    List<String> names = List.copyOf(vocabulary.tables().keySet());
    Optional<String> name =
        keys.need("table", "one of " + String.join(", ", names) + OR_OWN)
            .flatMap(entry -> entry.word(names, OR_OWN));
    Optional<KnownTable> known = name.flatMap(this::known);
    tellKeys(keys, known);
    Optional<Critical> critical = takes(known, "critical") ? critical(keys) : Optional.empty();
    Optional<BulkDensity> density =
        takes(known, "bulk-density") ? density(keys, known) : Optional.empty();
    return name.map(table -> new Published(table, critical, density));
  }

  private static boolean takes(Optional<KnownTable> known, String figure) {
    return known.map(table -> table.figures().contains(figure)).orElse(true);
  }

  private static void tellKeys(Section keys, Optional<KnownTable> known) {
    List<String> allowed = new ArrayList<>(KEYS);
    Map<String, String> foreign = new LinkedHashMap<>();
    OwnTableReader.KEYS.stream()
        .filter(key -> !KEYS.contains(key))
        .forEach(key -> foreign.put(key, "the table has its own: leave it out"));
    known.ifPresent(
        table -> {
          refuse("critical", "because", table, allowed, foreign);
          refuse("bulk-density", "uncertainty", table, allowed, foreign);
        });
    keys.only(allowed, foreign);
  }

  private static void refuse(
      String figure,
      String beside,
      KnownTable table,
      List<String> allowed,
      Map<String, String> foreign) {
    if (!table.figures().contains(figure)) {
      allowed.removeAll(List.of(figure, beside));
      foreign.put(figure, "this table reckons with no such figure: leave it out");
      foreign.put(beside, "this table reckons with no such figure: leave it out");
    }
  }

  private static Optional<Critical> critical(Section keys) {
    Optional<Double> number = keys.find("critical").flatMap(CRITICAL::number);
    Optional<String> because =
        keys.find("because").flatMap(e -> OwnTableReader.text(e, "a reason"));
    if (keys.has("critical")) {
      keys.need("because", "why another critical number than the table's is taken");
    } else if (keys.has("because")) {
      keys.need("critical", "the critical number that because is about");
    }
    return number.flatMap(given -> because.map(why -> new Critical(given, why)));
  }

  private static Optional<BulkDensity> density(Section keys, Optional<KnownTable> known) {
    Optional<Entry> at =
        known.isPresent()
            ? keys.need("bulk-density", Measure.BULK_DENSITY.expected())
            : keys.find("bulk-density");
    double share =
        keys.find("uncertainty")
            .flatMap(SHARE::number)
            .map(percent -> percent / 100)
            .orElse(USUAL_UNCERTAINTY);
    return at.flatMap(DENSITY::number).map(density -> new BulkDensity(density, share));
  }
}
