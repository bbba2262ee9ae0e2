package org.restpoint.adapters.journal;

import java.time.Instant;
import java.util.List;

/**
 * What is to leave a journal for good.
 *
 * @param entries ids of what was decided; all revisions go
 * @param rewritten entries that stay, and read otherwise from now on
 * @param instructions what was asked, that reads otherwise from now on
 * @param readings raw readings
 * @param messages sequence numbers of messages still owed to the broker
 */
public record Forgetting(
    List<String> entries,
    List<StoredEntry> rewritten,
    List<StoredInstruction> instructions,
    List<ReadingSpan> readings,
    List<Long> messages) {

  public Forgetting {
    entries = List.copyOf(entries);
    rewritten = List.copyOf(rewritten);
    instructions = List.copyOf(instructions);
    readings = List.copyOf(readings);
    messages = List.copyOf(messages);
  }

  /**
   * Raw readings of a probe.
   *
   * @param probe the probe
   * @param from the earliest, itself included
   * @param to the latest, itself included
   */
  public record ReadingSpan(String probe, Instant from, Instant to) {}

  /**
   * What became of it.
   *
   * @param readings how many raw readings went
   * @param clean whether no byte of it is left in the journal's files; false where somebody reads
   *     the journal at this moment or the disk has no room to write it anew: the rows are gone all
   *     the same, and their bytes go at the next forgetting
   */
  public record Forgotten(long readings, boolean clean) {}
}
