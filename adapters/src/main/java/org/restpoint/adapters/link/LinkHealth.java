package org.restpoint.adapters.link;

import java.time.Instant;
import java.util.Optional;

/**
 * How a link is.
 *
 * @param condition what it is doing
 * @param detail for a person: what is wrong, where, what to do; empty text when reading
 * @param lastArrival when something last arrived, if ever
 */
public record LinkHealth(Condition condition, String detail, Optional<Instant> lastArrival) {

  /** What a link is doing. */
  public enum Condition {
    /** Built, not started. */
    NEW,
    /** Trying to open its device or source. */
    OPENING,
    /** Open and delivering. */
    READING,
    /** Open, but nothing has arrived for longer than its no-data limit. */
    SILENT,
    /** Could not be opened or was lost; it tries again. */
    LOST,
    /** A recording that has come to its end. */
    ENDED,
    /** Closed. */
    CLOSED
  }
}
