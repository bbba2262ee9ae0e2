package org.restpoint.adapters.sdi12;

import java.time.Duration;
import java.util.function.Function;
import java.util.function.Predicate;
import org.restpoint.adapters.bus.Outcome;
import org.restpoint.adapters.bus.Turn;
import org.restpoint.adapters.sdi12.Answer.Malformed;
import org.restpoint.adapters.sdi12.Answer.Understood;
import org.restpoint.adapters.sdi12.Hearing.Heard;

/**
 * Commands and their answers in one turn on the wire. A command that is not answered as it should
 * is sent again, so and so many times (section 7 asks it of whoever commands).
 */
final class Dialogue {

  private final Turn turn;
  private final Duration answerWithin;
  private final int retries;

  /**
   * @param answerWithin how long an answer is waited for
   * @param retries how often a command is sent again
   */
  Dialogue(Turn turn, Duration answerWithin, int retries) {
    this.turn = turn;
    this.answerWithin = answerWithin;
    this.retries = retries;
  }

  /** The same, in which every command is sent once only. */
  Dialogue withoutRetries() {
    return new Dialogue(turn, answerWithin, 0);
  }

  Turn turn() {
    return turn;
  }

  /** What became of a command. */
  sealed interface Reply<T> {

    /**
     * An answer.
     *
     * @param value what it says
     */
    record Answered<T>(T value) implements Reply<T> {}

    /**
     * No answer, or none that can be understood.
     *
     * @param outcome why
     */
    record Failed<T>(Outcome outcome) implements Reply<T> {}
  }

  /** Asks a sensor. */
  <T> Reply<T> ask(SensorAddress address, Command command, Function<String, Answer<T>> reader) {
    return ask(command, address::begins, reader);
  }

  /**
   * Asks, and passes over answers that do not belong to the command: one of another sensor comes
   * too late to its own question.
   *
   * @param belongs whether a line that is not empty answers the command
   * @param reader what it says then
   */
  <T> Reply<T> ask(Command command, Predicate<String> belongs, Function<String, Answer<T>> reader) {
    Outcome why = new Outcome.NoAnswer();
    for (int attempt = 0; attempt <= retries && !turn.isOver(); attempt++) {
      turn.wire().discardInput();
      if (!turn.wire().write(command.bytes())) {
        return new Reply.Failed<>(new Outcome.WireGone());
      }
      Reply<T> reply = listen(new Hearing(turn, command.text()), belongs, reader, why);
      if (!(reply instanceof Reply.Failed<T> failed)
          || failed.outcome() instanceof Outcome.WireGone) {
        return reply;
      }
      why = failed.outcome();
    }
    return new Reply.Failed<>(why);
  }

  /** One attempt; {@code before} is why the ones before it failed. */
  private <T> Reply<T> listen(
      Hearing hearing,
      Predicate<String> belongs,
      Function<String, Answer<T>> reader,
      Outcome before) {
    Outcome why = before;
    long until = turn.nanos() + answerWithin.toNanos();
    while (true) {
      Heard heard = hearing.next(until);
      if (heard instanceof Heard.Gone) {
        return new Reply.Failed<>(new Outcome.WireGone());
      }
      if (!(heard instanceof Heard.Line line)) {
        String half = hearing.half();
        return new Reply.Failed<>(half.isEmpty() ? why : Refusals.half(half));
      }
      if (!belongs.test(line.text())) {
        why = Refusals.foreign(line.text());
        continue;
      }
      Answer<T> answer = reader.apply(line.text());
      if (answer instanceof Understood<T> understood) {
        return new Reply.Answered<>(understood.value());
      }
      why = Refusals.malformed(((Malformed<T>) answer).reason());
    }
  }

  /** How waiting for a service request ended. */
  enum Waited {
    /** The sensor says that its values are there. */
    REQUESTED,
    /** The time that it had announced is over. */
    ELAPSED,
    /** The wire is gone. */
    GONE
  }

  /** Waits until a sensor sends its address alone, for the time that it announced. */
  Waited serviceRequest(SensorAddress address, int seconds) {
    Hearing hearing = new Hearing(turn, "");
    long until = turn.nanos() + Duration.ofSeconds(seconds).toNanos();
    while (true) {
      Heard heard = hearing.next(until);
      if (heard instanceof Heard.Gone) {
        return Waited.GONE;
      }
      if (!(heard instanceof Heard.Line line)) {
        return Waited.ELAPSED;
      }
      if (line.text().equals(address.toString())) {
        return Waited.REQUESTED;
      }
    }
  }
}
