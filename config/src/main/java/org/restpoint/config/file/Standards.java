package org.restpoint.config.file;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.restpoint.config.station.StandardSolution;

/**
 * The standards of a file, also those that were refused, so that a probe which uses one can still
 * be checked.
 */
final class Standards {

  static final Standards NONE = new Standards();

  private final Map<String, Draft> drafts = new LinkedHashMap<>();

  /**
   * A standard as far as it was understood.
   *
   * @param at where it stands
   * @param kind the key that says what its label says; empty where that was refused
   * @param basisAt where its basis stands, if it gives one
   * @param basis its basis; empty where it gives none or one that was refused
   * @param solution the standard, unless it was refused
   */
  record Draft(
      Entry at,
      Optional<String> kind,
      Optional<Entry> basisAt,
      Optional<String> basis,
      Optional<StandardSolution> solution) {

    /** Whether it is known to be given in pH. */
    boolean isInPh() {
      return kind.filter(key -> !key.equals("concentration")).isPresent();
    }
  }

  private Standards() {}

  static Standards read(Entry entry, Vocabulary vocabulary) {
    Standards standards = new Standards();
    entry
        .section("a mapping from each standard's name to what its label says")
        .ifPresent(
            section ->
                section
                    .children()
                    .forEach(
                        (name, child) -> {
                          StationReader.isName(name, child);
                          Draft draft = new StandardReader(name, vocabulary).read(child);
                          standards.drafts.put(name, draft);
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
}
