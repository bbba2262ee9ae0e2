package org.restpoint.adapters.modbus;

import java.time.Duration;
import java.util.Optional;
import org.restpoint.adapters.bus.Turn;
import org.restpoint.adapters.wire.Wire;

/** Asks and waits, over whichever wire is open: all units of one wire in one conversation. */
final class Conversation {

  /**
   * So many asks in a row after which nothing at all came, over a connection that can be made anew:
   * the device was switched off and on, say, and knows nothing of the connection.
   */
  private static final int FRUITLESS_ASKS = 2;

  private static final int READ_BYTES = 256;

  private final Framing framing;
  private final Duration silence;
  private final boolean connected;
  private final LateAnswers late = new LateAnswers();
  private final byte[] bytes = new byte[READ_BYTES];
  private int fruitless;

  private Conversation(Framing framing, Duration silence, boolean connected) {
    this.framing = framing;
    this.silence = silence;
    this.connected = connected;
  }

  /** Over a serial line of a speed in bits per second. */
  static Conversation rtu(int baud) {
    return new Conversation(new RtuFraming(), RtuFraming.silence(baud), false);
  }

  /** Over a TCP connection. */
  static Conversation tcp() {
    return new Conversation(new TcpFraming(), Duration.ZERO, true);
  }

  /** What came of an ask. */
  sealed interface Reply {

    /** An answer. */
    record Answered(ReadRequest.Answer answer) implements Reply {}

    /** Something that is no answer: what, in words. */
    record Garbled(String account) implements Reply {}

    /**
     * Nothing.
     *
     * @param stale whether the connection is to be made anew
     */
    record Nothing(boolean stale) implements Reply {}

    /** The wire is gone. */
    record Gone() implements Reply {}
  }

  /** Asks once. */
  Reply ask(Turn turn, int unit, ReadRequest request, Duration patience)
      throws InterruptedException {
    Wire wire = turn.wire();
    if (!isQuiet(turn, unit, request)) {
      return gone();
    }
    Framing.Ask ask = framing.ask(unit, request);
    if (!wire.write(ask.bytes())) {
      return gone();
    }
    long asked = turn.nanos();
    long lastByte = asked;
    Heard heard = new Heard();
    while (turn.nanos() - asked < patience.toNanos() && !turn.isOver()) {
      int count = wire.read(bytes);
      if (count < 0) {
        return gone();
      }
      lastByte = count > 0 ? turn.nanos() : lastByte;
      heard.add(bytes, count);
      Optional<ReadRequest.Answer> answer = ask.answer(heard);
      if (answer.isPresent()) {
        fruitless = 0;
        late.answered(unit, request, turn.nanos(), patience.toNanos());
        return new Reply.Answered(answer.get());
      }
      if (turn.nanos() - lastByte >= silence.toNanos() && count == 0 && ask.isBroken(heard)) {
        break;
      }
    }
    late.missed(unit, request, turn.nanos(), patience.toNanos());
    fruitless = heard.length() == 0 ? fruitless + 1 : 0;
    Optional<String> account = ask.account(heard);
    return account.isPresent() ? new Reply.Garbled(account.get()) : nothing();
  }

  private Reply nothing() {
    boolean stale = connected && fruitless >= FRUITLESS_ASKS;
    fruitless = stale ? 0 : fruitless;
    return new Reply.Nothing(stale);
  }

  private Reply gone() {
    fruitless = 0;
    return new Reply.Gone();
  }

  /**
   * Lets what is late go by and the line rest between two frames, then forgets what has come.
   *
   * @return false when the wire is gone
   */
  private boolean isQuiet(Turn turn, int unit, ReadRequest request) throws InterruptedException {
    if (!connected) {
      while (late.putOffNanos(unit, request, turn.nanos()) > 0 && !turn.isOver()) {
        if (turn.wire().read(bytes) < 0) {
          return false;
        }
      }
    }
    turn.pause(silence);
    turn.wire().discardInput();
    return true;
  }
}
