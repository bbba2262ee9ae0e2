package org.restpoint.adapters.mqtt;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.regex.Pattern;
import org.restpoint.stability.reading.Reading;

/** A payload that is one decimal number; white space around it is passed over. */
final class NumberText {

  private static final Pattern NUMBER =
      Pattern.compile("[-+]?(?:\\d+(?:\\.\\d*)?|\\.\\d+)(?:[eE][-+]?\\d+)?");

  private NumberText() {}

  static Reading read(Instant time, byte[] payload) throws RejectedMessageException {
    String text = new String(payload, StandardCharsets.UTF_8).strip();
    if (text.isEmpty()) {
      throw new RejectedMessageException("it is empty");
    }
    if (!NUMBER.matcher(text).matches()) {
      throw new RejectedMessageException("expected a number such as 187.4");
    }
    try {
      return Reading.ofMillivolts(time, Double.parseDouble(text));
    } catch (IllegalArgumentException e) {
      throw new RejectedMessageException(String.valueOf(e.getMessage()));
    }
  }
}
