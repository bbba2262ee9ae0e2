package org.restpoint.config.file;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.restpoint.config.station.Probe;

/** Reads all probes and checks what they ask of each other. */
final class ProbesReader {

  static final String PROBES = "a mapping from each probe's name to what it is";

  private final Path folder;
  private final Vocabulary vocabulary;
  private final Standards standards;

  ProbesReader(Path folder, Vocabulary vocabulary, Standards standards) {
    this.folder = folder;
    this.vocabulary = vocabulary;
    this.standards = standards;
  }

  /** The probes by name; those that were refused are left out. */
  Map<String, Probe> read(Entry entry) {
    Map<String, ProbeDraft> drafts = new LinkedHashMap<>();
    entry
        .section(PROBES)
        .ifPresent(
            section -> {
              section.children().forEach((name, child) -> drafts.put(name, draft(name, child)));
              if (drafts.isEmpty()) {
                entry.refuse(PROBES, "no probe");
              }
            });
    SharedPorts.tell(drafts.values().stream().flatMap(draft -> draft.port().stream()).toList());
    drafts.values().forEach(draft -> draft.thermometer().ifPresent(e -> check(e, draft, drafts)));
    Map<String, Probe> probes = new LinkedHashMap<>();
    drafts.forEach((name, draft) -> draft.probe().ifPresent(probe -> probes.put(name, probe)));
    return probes;
  }

  private ProbeDraft draft(String name, Entry entry) {
    StationReader.isName(name, entry);
    return new ProbeReader(name, folder, vocabulary, standards).read(entry);
  }

  private static void check(Entry asked, ProbeDraft asker, Map<String, ProbeDraft> drafts) {
    String name = asked.quietText().orElse("");
    List<String> others = new ArrayList<>(drafts.keySet());
    others.remove(asker.name());
    String expected = "another probe that gives temperatures";
    ProbeDraft other = drafts.get(name);
    if (name.equals(asker.name())) {
      asked.refuse(expected, "the probe itself", "use { from: reading } for its own temperature");
    } else if (other == null) {
      String known =
          others.isEmpty() ? " (there is no other)" : " (" + String.join(", ", others) + ")";
      asked
          .problems()
          .add(
              new Problem(
                  asked.key(),
                  asked.line(),
                  expected + known,
                  asked.found(),
                  Entry.meant(name, others)));
    } else {
      other
          .link()
          .flatMap(CarriedTemperature::lack)
          .ifPresent(lack -> asked.refuse(expected, name + " with " + lack.found(), lack.remedy()));
    }
  }
}
