package org.restpoint.config.file;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.restpoint.config.file.Measure.Measured;
import org.restpoint.config.station.StandardSolution;

/**
 * The standards of a file, also those that were refused, so that a probe which uses one can still
 * be checked.
 */
final class Standards {

  /** The keys of a standard. */
  static final List<String> KEYS =
      List.of("concentration", "basis", "uncertainty", "lot", "expires");

  static final Standards NONE = new Standards();

  /** What makers commonly state for a volumetric standard. */
  private static final double USUAL_UNCERTAINTY = 0.01;

  private static final String A_DATE = "a date like 2027-03-01";

  private final Map<String, Draft> drafts = new LinkedHashMap<>();

  /**
   * A standard as far as it was understood.
   *
   * @param at where it stands
   * @param basisAt where its basis stands, if it gives one
   * @param basis its basis; empty where it gives none or one that was refused
   * @param solution the standard, unless it was refused
   */
  record Draft(
      Entry at,
      Optional<Entry> basisAt,
      Optional<String> basis,
      Optional<StandardSolution> solution) {}

  private Standards() {}

  static Standards read(Entry entry, Vocabulary vocabulary) {
    Standards standards = new Standards();
    entry
        .section("a mapping from each standard's name to its concentration")
        .ifPresent(
            section ->
                section
                    .children()
                    .forEach(
                        (name, child) -> {
                          StationReader.isName(name, child);
                          standards.drafts.put(name, draft(name, child, vocabulary));
                        }));
    return standards;
  }

  List<StandardSolution> solutions() {
    return drafts.values().stream().flatMap(draft -> draft.solution().stream()).toList();
  }

  List<String> names() {
    return List.copyOf(drafts.keySet());
  }

  Optional<Draft> find(String name) {
    return Optional.ofNullable(drafts.get(name));
  }

  private static Draft draft(String name, Entry entry, Vocabulary vocabulary) {
    Optional<Section> section =
        entry.section("a mapping with concentration, e.g. { concentration: 20 mg/L }");
    if (section.isEmpty()) {
      return new Draft(entry, Optional.empty(), Optional.empty(), Optional.empty());
    }
    Section keys = section.get();
    keys.only(KEYS);
    Optional<Measured> concentration =
        keys.need("concentration", Measure.CONCENTRATION.expected()).flatMap(Concentrations::read);
    Optional<String> basis = keys.find("basis").flatMap(value -> value.word(vocabulary.bases()));
    double uncertainty =
        keys.find("uncertainty")
            .flatMap(value -> Concentrations.uncertainty(value, concentration))
            .orElse(USUAL_UNCERTAINTY);
    Optional<String> lot = keys.find("lot").flatMap(value -> value.freeText("the lot's mark"));
    Optional<LocalDate> expires = keys.find("expires").flatMap(Standards::date);
    Optional<StandardSolution> solution =
        concentration.map(
            measured ->
                new StandardSolution(
                    name, Concentrations.quantity(measured), basis, uncertainty, lot, expires));
    return new Draft(entry, keys.find("basis"), basis, solution);
  }

  private static Optional<LocalDate> date(Entry entry) {
    Optional<String> text = entry.text(A_DATE);
    try {
      return text.map(LocalDate::parse);
    } catch (DateTimeException e) {
      entry.refuse(A_DATE);
      return Optional.empty();
    }
  }
}
