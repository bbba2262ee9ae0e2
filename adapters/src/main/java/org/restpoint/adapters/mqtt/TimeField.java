package org.restpoint.adapters.mqtt;

import com.fasterxml.jackson.core.JsonPointer;
import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.time.temporal.ChronoUnit;
import org.restpoint.adapters.text.Excerpt;
import org.restpoint.adapters.text.IsoTime;

/**
 * Where a JSON message has its time: a text is ISO 8601 with {@code Z} or an offset, a number
 * counts from 1970-01-01T00:00:00Z. Cut to the millisecond. Refuses, with an {@link
 * IllegalArgumentException}, a pointer that is not one by RFC 6901.
 *
 * @param pointer JSON pointer to the time
 * @param unit what a number counts; of no consequence for a text
 */
public record TimeField(String pointer, Unit unit) {

  /** What a number counts. */
  public enum Unit {
    /** Seconds, whole or not. */
    SECONDS(3),
    /** Milliseconds. */
    MILLISECONDS(0);

    private final int digitsToMillis;

    Unit(int digitsToMillis) {
      this.digitsToMillis = digitsToMillis;
    }
  }

  public TimeField {
    JsonFieldPointer.require(pointer);
  }

  Instant in(JsonNode tree) throws RejectedMessageException {
    JsonNode found = tree.at(JsonPointer.compile(pointer));
    if (found.isMissingNode() || found.isNull()) {
      throw new RejectedMessageException("there is no time at " + pointer);
    }
    if (found.isNumber()) {
      BigDecimal count = ExactNumber.of(found, "the time at " + pointer);
      return Instant.ofEpochMilli(ExactNumber.whole(count, unit.digitsToMillis));
    }
    if (found.isTextual()) {
      return read(found.textValue());
    }
    throw new RejectedMessageException(
        "expected a time at %s, a text or a number, found %s"
            .formatted(pointer, StrictJson.kind(found)));
  }

  private Instant read(String text) throws RejectedMessageException {
    try {
      return OffsetDateTime.parse(text, IsoTime.FORMATTER)
          .toInstant()
          .truncatedTo(ChronoUnit.MILLIS);
    } catch (DateTimeParseException e) {
      throw new RejectedMessageException(
          isLocal(text)
              ? "the time at %s has neither Z nor an offset such as +02:00: %s"
                  .formatted(pointer, Excerpt.of(text))
              : "expected a time at %s such as 2026-04-02T14:03:00Z, found %s"
                  .formatted(pointer, Excerpt.of(text)));
    }
  }

  private static boolean isLocal(String text) {
    try {
      LocalDateTime.parse(text);
      return true;
    } catch (DateTimeParseException e) {
      return false;
    }
  }
}
