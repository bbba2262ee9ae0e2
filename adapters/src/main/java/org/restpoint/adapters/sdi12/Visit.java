package org.restpoint.adapters.sdi12;

import java.time.Duration;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;
import java.util.function.LongSupplier;
import java.util.function.Predicate;
import org.restpoint.adapters.bus.Outcome;
import org.restpoint.adapters.bus.Turn;
import org.restpoint.adapters.sdi12.Answer.Malformed;
import org.restpoint.adapters.sdi12.Answer.Understood;
import org.restpoint.adapters.sdi12.Dialogue.Reply;
import org.restpoint.adapters.wire.Wire;

/**
 * What a person asks of a bus whose port no service has: who is there, and that a sensor has
 * another address. Nothing else ever changes an address.
 */
public final class Visit {

  /** A sensor may take this long to keep its new address, and is sent nothing (section 4.4.4). */
  private static final Duration KEEPING = Duration.ofSeconds(1);

  private final Dialogue dialogue;
  private final Turn turn;

  /**
   * @param wire the open wire, whose owner closes it
   * @param nanos a monotonic clock in nanoseconds
   * @param answerWithin how long an answer is waited for
   * @param retries how often a command is sent again
   */
  public Visit(Wire wire, LongSupplier nanos, Duration answerWithin, int retries) {
    this(new OnlyTurn(wire, nanos), answerWithin, retries);
  }

  Visit(Turn turn, Duration answerWithin, int retries) {
    this.turn = turn;
    this.dialogue = new Dialogue(turn, answerWithin, retries);
  }

  /** The one turn of a wire that nobody else is asked over. */
  private record OnlyTurn(Wire wire, LongSupplier clock) implements Turn {

    @Override
    public long nanos() {
      return clock.getAsLong();
    }

    @Override
    public boolean pause(Duration span) throws InterruptedException {
      TimeUnit.NANOSECONDS.sleep(span.toNanos());
      return false;
    }

    @Override
    public boolean isOver() {
      return false;
    }
  }

  /**
   * What came of a question.
   *
   * @param <T> what is asked for
   */
  public sealed interface Found<T> {

    /**
     * An answer.
     *
     * @param value what it says
     */
    record Here<T>(T value) implements Found<T> {}

    /** Nobody answered. */
    record Nobody<T>() implements Found<T> {}

    /**
     * What answered cannot be understood.
     *
     * @param reason why, a clause without a full stop
     */
    record Unclear<T>(String reason) implements Found<T> {}
  }

  /** What came of changing an address. */
  public enum Change {
    /** The sensor answers at its new address. */
    DONE,
    /** No sensor answers at the old address; nothing was changed. */
    NOBODY,
    /** A sensor has the new address already; nothing was changed. */
    TAKEN,
    /** What answered cannot be understood; nothing was changed. */
    UNCLEAR,
    /** The change was asked for, and no sensor answers at the new address. */
    NOT_CONFIRMED
  }

  /** The address of the only sensor; unclear where several answer at once. */
  public Found<SensorAddress> onlyAddress() {
    return found(
        Command.whichAddress(),
        line -> SensorAddress.isOne(line.charAt(0)),
        line ->
            line.length() == 1
                ? new Understood<>(new SensorAddress(line.charAt(0)))
                : new Malformed<>("\"%s\" is more than one address".formatted(line)));
  }

  /** What a sensor says of itself. */
  public Found<Identification> identify(SensorAddress address) {
    return found(Command.identify(address), address::begins, Identification::read);
  }

  /**
   * Gives a sensor another address: only where one answers at the old address and none at the new
   * one.
   *
   * @throws InterruptedException when somebody wants the thread to end
   */
  public Change change(SensorAddress from, SensorAddress to) throws InterruptedException {
    Found<SensorAddress> present = acknowledge(from);
    if (!(present instanceof Found.Here)) {
      return present instanceof Found.Nobody ? Change.NOBODY : Change.UNCLEAR;
    }
    Found<SensorAddress> occupant = acknowledge(to);
    if (!(occupant instanceof Found.Nobody)) {
      return occupant instanceof Found.Here ? Change.TAKEN : Change.UNCLEAR;
    }
    // Its answer may be lost, and then it does not answer at the old address any more: what counts
    // is that it answers at the new one.
    bare(Command.changeAddress(from, to), to);
    turn.pause(KEEPING);
    return acknowledge(to) instanceof Found.Here ? Change.DONE : Change.NOT_CONFIRMED;
  }

  private Found<SensorAddress> acknowledge(SensorAddress address) {
    return bare(Command.acknowledge(address), address);
  }

  /** Asks for an answer that is an address alone. */
  private Found<SensorAddress> bare(Command command, SensorAddress address) {
    return found(
        command,
        address::begins,
        line ->
            line.length() == 1
                ? new Understood<>(address)
                : new Malformed<>("\"%s\" is not the address alone".formatted(line)));
  }

  private <T> Found<T> found(
      Command command, Predicate<String> belongs, Function<String, Answer<T>> reader) {
    Reply<T> reply = dialogue.ask(command, belongs, reader);
    if (reply instanceof Reply.Answered<T> answered) {
      return new Found.Here<>(answered.value());
    }
    Outcome why = ((Reply.Failed<T>) reply).outcome();
    if (why instanceof Outcome.Rejected rejected) {
      return new Found.Unclear<>(rejected.reason());
    }
    return why instanceof Outcome.WireGone
        ? new Found.Unclear<>("the converter is gone")
        : new Found.Nobody<>();
  }
}
