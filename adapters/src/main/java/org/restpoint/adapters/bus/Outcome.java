package org.restpoint.adapters.bus;

import java.time.Duration;
import org.restpoint.adapters.quantity.Parsed;

/** What came of asking a probe. */
public sealed interface Outcome {

  /**
   * A reading. It carries the time at which the exchange returned.
   *
   * @param values its potential, its temperature, or both
   */
  record Values(Parsed.Values values) implements Outcome {}

  /**
   * An answer that is not a reading. It is counted and told.
   *
   * @param reason why, a clause without a full stop
   * @param remedy what to look at, a sentence without a full stop
   */
  record Rejected(String reason, String remedy) implements Outcome {}

  /**
   * An answer that is not a reading, after which the probe is asked once more as soon as nobody
   * else has waited longer. The answer is counted and told, whatever comes of the other ask.
   *
   * @param rejected what was wrong with it
   * @param next how it is asked again
   */
  record Again(Rejected rejected, Exchange next) implements Outcome {}

  /** Nothing came that could be an answer. It is told; silence is watched for by the bus. */
  record NoAnswer() implements Outcome {}

  /**
   * Nothing came, and nothing more is to be expected of this connection: it is made anew, without
   * being told as lost. Otherwise as {@link NoAnswer}: silence is counted through it.
   */
  record Stale() implements Outcome {}

  /**
   * The answer takes its time, and the wire is free meanwhile: other probes are asked. Lost with
   * the wire.
   *
   * @param after how long until {@code rest} is wanted
   * @param rest what is still to be asked
   */
  record Later(Duration after, Exchange rest) implements Outcome {}

  /** The device at this end of the wire is gone: unplugged, or its connection ended. */
  record WireGone() implements Outcome {}
}
