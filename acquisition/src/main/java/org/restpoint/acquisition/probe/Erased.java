package org.restpoint.acquisition.probe;

import java.util.Optional;
import java.util.Set;

/**
 * What an archive has taken out for good.
 *
 * @param results results, each with all its revisions
 * @param readings raw readings
 * @param instructions instructions that were kept
 * @param others whatever else: a record, notices, messages that were still to be sent
 * @param standing the probes whose electrodes were not told to stand elsewhere since
 * @param clean whether no byte of it is left
 * @param trouble why nothing could be taken out
 */
public record Erased(
    long results,
    long readings,
    long instructions,
    long others,
    Set<String> standing,
    boolean clean,
    Optional<String> trouble) {

  public Erased {
    standing = Set.copyOf(standing);
  }

  /** Where nothing was kept. */
  public static Erased nothing() {
    return new Erased(0, 0, 0, 0, Set.of(), true, Optional.empty());
  }

  /** Where nothing could be taken out. */
  public static Erased failed(String why) {
    return new Erased(0, 0, 0, 0, Set.of(), false, Optional.of(why));
  }

  /** Whether there was anything. */
  public boolean isNothing() {
    return results + readings + instructions + others == 0;
  }
}
