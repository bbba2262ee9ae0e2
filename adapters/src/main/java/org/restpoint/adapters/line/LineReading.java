package org.restpoint.adapters.line;

import org.restpoint.adapters.quantity.Parsed;

/** What one probe's pattern finds in a line. */
public sealed interface LineReading {

  /**
   * The line is this probe's.
   *
   * @param said what it says: values, or why there are none
   */
  record Own(Parsed said) implements LineReading {}

  /**
   * The line is one of another channel.
   *
   * @param channel which
   */
  record OfChannel(String channel) implements LineReading {}

  /**
   * The pattern does not find its way in the line.
   *
   * @param reason why, a clause without a full stop
   */
  record Unread(String reason) implements LineReading {}
}
