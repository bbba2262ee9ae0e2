package org.restpoint.adapters.journal;

import java.util.List;
import java.util.Map;

/**
 * What is committed together: all of it or nothing.
 *
 * @param readings raw readings, in order of arrival
 * @param entries what was decided
 * @param instructions what was asked
 * @param memories the latest small state of each probe's routine, by probe; replaces the earlier
 * @param messages what is owed to the broker, in order of sending
 */
public record JournalBatch(
    List<StoredReading> readings,
    List<StoredEntry> entries,
    List<StoredInstruction> instructions,
    Map<String, String> memories,
    List<OutgoingMessage> messages) {

  public JournalBatch {
    readings = List.copyOf(readings);
    entries = List.copyOf(entries);
    instructions = List.copyOf(instructions);
    memories = Map.copyOf(memories);
    messages = List.copyOf(messages);
  }

  /** A batch of raw readings alone. */
  public static JournalBatch ofReadings(List<StoredReading> readings) {
    return new JournalBatch(readings, List.of(), List.of(), Map.of(), List.of());
  }

  /** Whether there is nothing in it. */
  public boolean isEmpty() {
    return readings.isEmpty()
        && entries.isEmpty()
        && instructions.isEmpty()
        && memories.isEmpty()
        && messages.isEmpty();
  }
}
