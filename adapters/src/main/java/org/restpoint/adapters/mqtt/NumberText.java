package org.restpoint.adapters.mqtt;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;
import org.restpoint.adapters.quantity.Meaning;
import org.restpoint.adapters.quantity.PotentialScale;
import org.restpoint.adapters.text.DecimalNumber;
import org.restpoint.stability.reading.Reading;

/** A payload that is one decimal number; white space around it is passed over. */
final class NumberText {

  private static final Meaning MILLIVOLTS =
      new Meaning(Optional.of(PotentialScale.MILLIVOLTS), Optional.empty());

  private NumberText() {}

  static Reading read(Instant time, byte[] payload) throws RejectedMessageException {
    String text = new String(payload, StandardCharsets.UTF_8);
    if (text.isBlank()) {
      throw new RejectedMessageException("it is empty");
    }
    OptionalDouble millivolts = DecimalNumber.in(text);
    if (millivolts.isEmpty()) {
      throw new RejectedMessageException("expected a number such as 187.4");
    }
    return Believed.reading(MILLIVOLTS.parsed(millivolts, OptionalDouble.empty()), time);
  }
}
