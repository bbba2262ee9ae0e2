package org.restpoint.acquisition.records;

import java.io.StringWriter;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.BiConsumer;
import org.restpoint.adapters.journal.Journal;
import org.restpoint.adapters.journal.JournalBatch;
import org.restpoint.adapters.journal.JournalReader;
import org.restpoint.adapters.journal.JournalSettings;
import org.restpoint.adapters.journal.SpanQuery;
import org.restpoint.adapters.journal.StoredEntry;
import org.restpoint.adapters.journal.StoredInstruction;

/** A real journal with the invented results of a test. */
final class BenchJournal {

  static final ResultQuery ALL = ResultQuery.of(SpanQuery.all());

  private static final String NUMBER =
      """
      {"event":"result","id":"%s","revision":%d,"station":"bench","probe":"no3-a","time":"%s",
       "outcome":"settled","millivolts":183.28,"celsius":21.9,
       "concentration":{"value":%s,"unit":"mg/L","basis":"as-N","uncertainty":0.25,"coverage":2,"relation":"="},
       "reported":{"value":%s,"unit":"mg/L","basis":"as-N","uncertainty":0.25,"coverage":2,"relation":"=","kind":"solution as measured"},
       "sample":%s,"quality":1,"flags":[],"reasons":[]}""";

  private final JournalSettings settings;
  private final List<StoredEntry> entries = new ArrayList<>();
  private final List<StoredInstruction> instructions = new ArrayList<>();

  BenchJournal(Path folder) {
    settings = new JournalSettings(folder.resolve("bench.db"), folder.resolve("native"));
  }

  /** A settled number in mg/L as N. */
  BenchJournal number(String id, int revision, String time, String value, String sample) {
    String json = NUMBER.formatted(id, revision, time, value, value, sample);
    return entry("result", id, revision, time, json);
  }

  BenchJournal entry(String kind, String id, int revision, String time, String json) {
    entries.add(new StoredEntry(id, revision, kind, "no3-a", Instant.parse(time), json));
    return this;
  }

  BenchJournal instruction(String id, String time, String json) {
    instructions.add(new StoredInstruction(id, "no3-a", Instant.parse(time), json));
    return this;
  }

  /** What is written of it. */
  String written(BiConsumer<JournalReader, StringWriter> writing) {
    try (Journal journal = new Journal(settings)) {
      journal.start();
      journal.commit(new JournalBatch(List.of(), entries, instructions, Map.of(), List.of()));
    }
    StringWriter text = new StringWriter();
    try (JournalReader reader = new JournalReader(settings)) {
      reader.start();
      writing.accept(reader, text);
    }
    return text.toString();
  }
}
