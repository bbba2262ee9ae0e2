package org.restpoint.adapters.journal;

import java.time.Instant;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Which entries are asked for; whatever is empty does not restrict.
 *
 * @param kind what they are, such as {@code result}
 * @param span whose, from when and how many
 */
public record EntryQuery(Optional<String> kind, SpanQuery span) {

  /** Every entry. */
  public static EntryQuery all() {
    return new EntryQuery(Optional.empty(), SpanQuery.all());
  }

  /** Entries of one kind. */
  public static EntryQuery ofKind(String kind) {
    return new EntryQuery(Optional.of(kind), SpanQuery.all());
  }

  /** Entries by all that can be asked; see {@link SpanQuery}. */
  public static EntryQuery of(
      Optional<String> kind,
      Optional<String> probe,
      Optional<Instant> from,
      Optional<Instant> to,
      OptionalInt limit) {
    return new EntryQuery(kind, new SpanQuery(probe, from, to, limit));
  }
}
