package org.restpoint.adapters.journal;

import java.time.Instant;
import java.util.List;

/**
 * What is to leave a journal for good.
 *
 * @param entries ids of what was decided; all revisions go
 * @param instructions what was asked
 * @param readings raw readings
 * @param words messages still owed to the broker go where one of these stands in them
 */
public record Forgetting(
    List<String> entries,
    List<InstructionKey> instructions,
    List<ReadingSpan> readings,
    List<String> words) {

  public Forgetting {
    entries = List.copyOf(entries);
    instructions = List.copyOf(instructions);
    readings = List.copyOf(readings);
    words = List.copyOf(words);
  }

  /**
   * An instruction.
   *
   * @param probe whom it was given to
   * @param id its id
   */
  public record InstructionKey(String probe, String id) {}

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
   * @param rows how many rows went
   * @param clean whether no byte of them is left in the journal's files; false where somebody reads
   *     the journal at this moment: they go at the next forgetting or when the service ends
   */
  public record Forgotten(long rows, boolean clean) {}
}
