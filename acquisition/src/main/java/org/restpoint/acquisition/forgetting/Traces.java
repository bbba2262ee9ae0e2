package org.restpoint.acquisition.forgetting;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.acquisition.event.SampleRecord;
import org.restpoint.adapters.journal.EntryQuery;
import org.restpoint.adapters.journal.Forgetting;
import org.restpoint.adapters.journal.Forgetting.ReadingSpan;
import org.restpoint.adapters.journal.Journal;
import org.restpoint.adapters.journal.StoredEntry;
import org.restpoint.adapters.outbox.OutboxMessage;

/** All that a journal keeps of one sample. Looks at every entry and instruction. */
public final class Traces {

  /** What stands in other results in place of what a check of the sample showed. */
  private static final String FORGOTTEN = "a check of a sample that was forgotten since";

  private static final int MESSAGES_AT_ONCE = 1000;

  private final Naming naming;
  private final Set<String> results = new TreeSet<>();
  private final List<String> shown = new ArrayList<>();
  private final ToldInstructions told;
  private final Attempts attempts;
  private final Set<String> entries = new LinkedHashSet<>();
  private final List<StoredEntry> rewritten = new ArrayList<>();
  private final List<Long> messages = new ArrayList<>();

  private Traces(Journal journal, String number) {
    List<StoredEntry> latest = journal.resultsOfSample(number);
    for (StoredEntry result : latest) {
      results.add(result.id());
      String text = Json.read(result.json()).at("/verification/text").asText();
      if (!text.isEmpty()) {
        shown.add(Naming.escaped(text));
      }
    }
    this.naming = new Naming(number, results);
    this.told = ToldInstructions.of(journal, naming, number);
    this.attempts = new Attempts(journal, told, latest, results);
    entries.addAll(results);
    journal.entries(EntryQuery.all(), entry -> look(entry, SampleRecord.idOf(number)));
    look(journal);
  }

  /** All that a journal keeps of the sample with this number. */
  public static Traces of(Journal journal, String number) {
    return new Traces(journal, number);
  }

  private void look(StoredEntry entry, String record) {
    if (results.contains(entry.id())) {
      return;
    }
    boolean names = naming.isIn(entry.json());
    if (entry.id().equals(record) || (entry.kind().equals("notice") && (names || quotes(entry)))) {
      entries.add(entry.id());
    } else if (entry.kind().equals("batch") && names) {
      rewrite(entry, summary(entry.json()));
    } else if (Naming.has(entry.json(), shown)) {
      if (entry.kind().equals("notice")) {
        entries.add(entry.id());
      } else {
        rewrite(entry, unsaid(entry.json()));
      }
    }
  }

  /** Whether it may quote a reading of the sample. */
  private boolean quotes(StoredEntry notice) {
    return attempts.spans().stream().anyMatch(span -> isIn(span, notice))
        && Quoting.CODES.contains(Json.read(notice.json()).path("code").asText());
  }

  private static boolean isIn(ReadingSpan span, StoredEntry entry) {
    return span.probe().equals(entry.probe())
        && !entry.time().isBefore(span.from())
        && !entry.time().isAfter(span.to());
  }

  private void rewrite(StoredEntry entry, String json) {
    rewritten.add(
        new StoredEntry(
            entry.id(), entry.revision(), entry.kind(), entry.probe(), entry.time(), json));
  }

  private String unsaid(String json) {
    String without = json;
    for (String text : shown) {
      without = without.replace(text, FORGOTTEN);
    }
    return without;
  }

  /** A summary of a batch whose cups of the sample are cups to rinse in. */
  private String summary(String json) {
    JsonNode node = Json.read(json);
    if (node.path("cups") instanceof ArrayNode cups) {
      for (int place = 0; place < cups.size(); place++) {
        if (cups.get(place) instanceof ObjectNode cup && naming.isIn(cup.toString())) {
          cup.retain("cup", "tries");
          cup.put("holds", "to rinse in").put("outcome", "rinsed").put("skipped", false);
          cup.putArray("flags");
          cup.putArray("reasons");
        }
      }
    }
    return EventJson.write(node);
  }

  private void look(Journal journal) {
    long after = 0;
    List<OutboxMessage> waiting = journal.unsent(after, MESSAGES_AT_ONCE);
    while (!waiting.isEmpty()) {
      for (OutboxMessage message : waiting) {
        after = message.sequence();
        if (naming.isIn(message.payload()) || Naming.has(message.payload(), shown)) {
          messages.add(after);
        }
      }
      waiting = journal.unsent(after, MESSAGES_AT_ONCE);
    }
  }

  /** What has to leave the journal. */
  public Forgetting forgetting() {
    return new Forgetting(
        List.copyOf(entries), rewritten, told.rewritten(), attempts.spans(), messages);
  }

  /** Whether there is nothing of it. */
  public boolean isNothing() {
    return entries.isEmpty()
        && rewritten.isEmpty()
        && told.rewritten().isEmpty()
        && messages.isEmpty();
  }

  /** How many results there are. */
  public long results() {
    return results.size();
  }

  /** How many instructions name it. */
  public long instructions() {
    return told.rewritten().size();
  }

  /** How much else there is: entries and messages. */
  public long others() {
    return (long) entries.size() - results.size() + rewritten.size() + messages.size();
  }

  /** The probes whose electrodes stand in it still, for all that was told. */
  public Set<String> standing() {
    return attempts.standing();
  }
}
