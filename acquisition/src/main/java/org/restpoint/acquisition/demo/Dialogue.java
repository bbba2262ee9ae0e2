package org.restpoint.acquisition.demo;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Consumer;
import java.util.function.Predicate;
import org.restpoint.acquisition.event.Answer;
import org.restpoint.acquisition.event.Event;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.acquisition.event.State;
import org.restpoint.acquisition.service.Topics;
import org.restpoint.adapters.mqtt.BrokerAddress;
import org.restpoint.adapters.mqtt.BrokerException;
import org.restpoint.adapters.mqtt.Caller;

/**
 * Talks to the station as anybody does who is not part of it: instructions go to the broker, and
 * what the station says comes from there. Used by one thread.
 */
final class Dialogue implements AutoCloseable {

  /** A station that is there answers within milliseconds; on a very busy machine within seconds. */
  private static final Duration FIRST_ANSWER = Duration.ofSeconds(3);

  /** Readings come all the time: nothing at all for so long means that something has ended. */
  private static final Duration SILENCE = Duration.ofSeconds(30);

  /** At the bench: a soak takes 20 min, and a reading is given up after 10. */
  private static final Duration LONGEST = Duration.ofHours(1);

  private static final Duration QUIET = Duration.ofMillis(200);
  private static final Duration LEAVE_WITHIN = Duration.ofSeconds(2);

  private final Caller caller;
  private final String instructionTopic;
  private final Consumer<Event> listener;

  private Dialogue(Caller caller, String instructionTopic, Consumer<Event> listener) {
    this.caller = caller;
    this.instructionTopic = instructionTopic;
    this.listener = listener;
  }

  /**
   * Connects.
   *
   * @param listener hears of each event while somebody waits for something
   */
  static Dialogue open(BrokerAddress broker, Topics topics, String probe, Consumer<Event> listener)
      throws BrokerException {
    Caller caller =
        new Caller(
            broker,
            "restpoint-demo-" + UUID.randomUUID(),
            InstantSource.system(),
            System::nanoTime);
    try {
      caller.open(topics.everything(probe));
    } catch (BrokerException e) {
      caller.close();
      throw e;
    }
    return new Dialogue(caller, topics.instruction(probe), listener);
  }

  /**
   * Gives an instruction and waits until it has ended.
   *
   * @return the last answer: refused, or done
   */
  Answer ask(ObjectNode instruction) throws BrokerException, InterruptedException {
    String id = UUID.randomUUID().toString();
    Optional<Answer> answer = firstAnswer(instruction.deepCopy().put("id", id), id);
    Patience patience = new Patience(LONGEST);
    while (answer.isEmpty() || answer.get().verdict() == Answer.Verdict.ACCEPTED) {
      answer = hear(patience).answerTo(id);
    }
    return answer.get();
  }

  /** Sends it until it is answered: the station may not be listening yet. */
  private Optional<Answer> firstAnswer(ObjectNode instruction, String id)
      throws BrokerException, InterruptedException {
    String message = EventJson.write(instruction);
    long began = System.nanoTime();
    while (System.nanoTime() - began < SILENCE.toNanos()) {
      caller.send(instructionTopic, message);
      long sent = System.nanoTime();
      for (long left = FIRST_ANSWER.toNanos(); left > 0; ) {
        Optional<Answer> answer = next(Duration.ofNanos(left)).flatMap(said -> said.answerTo(id));
        if (answer.isPresent()) {
          return answer;
        }
        left = FIRST_ANSWER.toNanos() - (System.nanoTime() - sent);
      }
    }
    throw DemoException.brokenOff(
        "the station did not answer within %d s".formatted(SILENCE.toSeconds()));
  }

  /** Waits for a state. */
  State state(Predicate<State> wanted) throws InterruptedException {
    Patience patience = new Patience(LONGEST);
    while (true) {
      Optional<Event> event = hear(patience).event();
      if (event.isPresent() && event.get() instanceof State state && wanted.test(state)) {
        return state;
      }
    }
  }

  /** Waits until something happens at a time or after it; readings do all the time. */
  void until(Instant time) throws InterruptedException {
    Patience patience = new Patience(LONGEST);
    Optional<Event> event = Optional.empty();
    while (event.isEmpty() || event.get().time().isBefore(time)) {
      event = hear(patience).event();
    }
  }

  /**
   * Hears what is still on its way once the readings have ended. A broker takes a listener who
   * leaves in the middle of a message for a failure.
   */
  void hearOut() throws InterruptedException {
    long began = System.nanoTime();
    while (next(QUIET).isPresent() && System.nanoTime() - began < LEAVE_WITHIN.toNanos()) {
      // The listener has heard it; nobody waits for anything any more.
    }
  }

  private Said hear(Patience patience) throws InterruptedException {
    Optional<Said> said = next(SILENCE);
    if (said.isEmpty()) {
      throw DemoException.brokenOff(
          "nothing was heard from the station for %d s".formatted(SILENCE.toSeconds()));
    }
    said.get().event().ifPresent(patience::tax);
    return said.get();
  }

  private Optional<Said> next(Duration limit) throws InterruptedException {
    Optional<Said> said = caller.next(limit).map(Said::of);
    said.flatMap(Said::event).ifPresent(listener);
    return said;
  }

  @Override
  public void close() {
    caller.close();
  }
}
