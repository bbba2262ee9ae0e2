package org.restpoint.adapters.bus;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.OptionalDouble;
import org.restpoint.adapters.quantity.Parsed;

/**
 * Sends a question and reads a line: a number is a potential in mV, {@code later QUESTION} says
 * that another question is to be asked a second later, {@code stale} gives the wire up, anything
 * else is rejected.
 *
 * @param question what is sent
 * @param patience how long the line is waited for
 */
record LineExchange(String question, Duration patience) implements Exchange {

  @Override
  public Outcome poll(Turn turn) {
    if (!turn.wire().write(question.getBytes(StandardCharsets.ISO_8859_1))) {
      return new Outcome.WireGone();
    }
    StringBuilder line = new StringBuilder();
    byte[] bytes = new byte[64];
    long asked = turn.nanos();
    while (line.indexOf("\n") < 0) {
      int count = turn.wire().read(bytes);
      if (count < 0) {
        return new Outcome.WireGone();
      }
      line.append(new String(bytes, 0, count, StandardCharsets.ISO_8859_1));
      if (turn.isOver() || turn.nanos() - asked >= patience.toNanos()) {
        return new Outcome.NoAnswer();
      }
    }
    return outcome(line.toString().strip());
  }

  private Outcome outcome(String line) {
    if (line.startsWith("later ")) {
      return new Outcome.Later(
          Duration.ofSeconds(1), new LineExchange(line.substring(6), patience));
    }
    if (line.equals("stale")) {
      return new Outcome.Stale();
    }
    try {
      return new Outcome.Values(
          new Parsed.Values(OptionalDouble.of(Double.parseDouble(line)), OptionalDouble.empty()));
    } catch (NumberFormatException e) {
      return new Outcome.Rejected("\"%s\" is no number".formatted(line), "Look at the device");
    }
  }
}
