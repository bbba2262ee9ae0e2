package org.restpoint.adapters.sdi12;

import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.restpoint.adapters.bus.Outcome;
import org.restpoint.adapters.sdi12.Dialogue.Reply;
import org.restpoint.adapters.sdi12.Dialogue.Waited;
import org.restpoint.adapters.sdi12.Measurement.Kind;
import org.restpoint.adapters.wire.Wire;

/**
 * One sensor, for all the probes that read it. For the bus's thread alone.
 *
 * <p>A measurement is made once for all who want the same one at about the same time. While it runs
 * concurrently the sensor is sent nothing, because any command would abort it (section 4.4.7.1).
 *
 * <p>After it did not answer it is asked once only, until it does: a sensor that is switched off
 * holds up the others no longer than one answer.
 */
final class Sensor {

  /** What was measured no longer ago than this is taken for a measurement of now. */
  static final Duration FRESH = Duration.ofSeconds(1);

  private final SensorAddress address;
  private final Map<Measurement, Taken> latest = new HashMap<>();
  private @Nullable Running running;
  private boolean missed;
  private long count;

  Sensor(SensorAddress address) {
    this.address = address;
  }

  /** A concurrent measurement whose values are not there yet, or not fetched. */
  private record Running(Wire wire, Measurement measurement, int values, long readyNanos) {}

  /**
   * What a measurement came to.
   *
   * @param number of this measurement among all of the sensor, from 1
   * @param nanos when it was done
   * @param values the values, or why there are none
   */
  record Taken(long number, long nanos, Reply<List<Double>> values) {}

  /** How far a measurement is. */
  sealed interface Progress {

    /**
     * It takes its time.
     *
     * @param span how long from now
     */
    record Wait(Duration span) implements Progress {}

    /**
     * It is done.
     *
     * @param taken what it came to
     */
    record Done(Taken taken) implements Progress {}
  }

  /**
   * Measures, or takes what was just measured.
   *
   * @param had the number of the last measurement that the caller has had; 0 for none
   */
  Progress measure(Dialogue dialogue, Measurement measurement, long had) {
    Running before = running;
    if (before != null && before.wire() == dialogue.turn().wire()) {
      long left = before.readyNanos() - dialogue.turn().nanos();
      if (left > 0) {
        return new Progress.Wait(Duration.ofNanos(left));
      }
      done(
          dialogue,
          before.measurement(),
          fetch(dialogue, before.measurement(), before.values(), false));
    }
    running = null;
    Taken last = latest.get(measurement);
    if (last != null
        && last.number() > had
        && dialogue.turn().nanos() - last.nanos() <= FRESH.toNanos()) {
      return new Progress.Done(last);
    }
    return begin(missed ? dialogue.withoutRetries() : dialogue, measurement);
  }

  private Progress begin(Dialogue dialogue, Measurement measurement) {
    Command command = Command.measure(address, measurement);
    if (measurement.kind() == Kind.CONTINUOUS) {
      Reply<List<Double>> values =
          dialogue.ask(address, command, line -> DataAnswer.read(line, measurement));
      return done(
          dialogue,
          measurement,
          isEmpty(values) ? new Reply.Failed<>(Refusals.unknown(measurement)) : values);
    }
    Reply<Announcement> reply =
        dialogue.ask(address, command, line -> Announcement.read(line, measurement.kind()));
    if (reply instanceof Reply.Answered<Announcement> answered) {
      return announced(dialogue, measurement, answered.value());
    }
    Outcome why = ((Reply.Failed<Announcement>) reply).outcome();
    return done(dialogue, measurement, new Reply.Failed<>(why));
  }

  private Progress announced(Dialogue dialogue, Measurement measurement, Announcement said) {
    if (said.values() == 0) {
      return done(dialogue, measurement, new Reply.Failed<>(Refusals.unknown(measurement)));
    }
    if (said.seconds() > 0 && measurement.kind() == Kind.CONCURRENT) {
      Duration wait = Duration.ofSeconds(said.seconds());
      long ready = dialogue.turn().nanos() + wait.toNanos();
      running = new Running(dialogue.turn().wire(), measurement, said.values(), ready);
      return new Progress.Wait(wait);
    }
    Waited waited =
        said.seconds() == 0 ? Waited.REQUESTED : dialogue.serviceRequest(address, said.seconds());
    return done(
        dialogue,
        measurement,
        waited == Waited.GONE
            ? new Reply.Failed<>(new Outcome.WireGone())
            : fetch(dialogue, measurement, said.values(), waited == Waited.ELAPSED));
  }

  /**
   * All values of a measurement that is done, part by part (section 4.4.8).
   *
   * @param requestMayCome whether a service request may still be on its way, which looks like an
   *     answer without values
   */
  private Reply<List<Double>> fetch(
      Dialogue dialogue, Measurement measurement, int announced, boolean requestMayCome) {
    Reply<List<Double>> reply = part(dialogue, measurement, 0);
    if (requestMayCome && isEmpty(reply)) {
      reply = part(dialogue, measurement, 0);
    }
    List<Double> values = new ArrayList<>();
    int part = 0;
    while (reply instanceof Reply.Answered<List<Double>> answered && !isEmpty(reply)) {
      values.addAll(answered.value());
      part++;
      if (values.size() >= announced || part == Command.DATA_COMMANDS) {
        break;
      }
      reply = part(dialogue, measurement, part);
    }
    if (reply instanceof Reply.Failed<List<Double>>) {
      return reply;
    }
    if (values.isEmpty()) {
      return new Reply.Failed<>(Refusals.aborted(measurement));
    }
    return values.size() == announced
        ? new Reply.Answered<>(List.copyOf(values))
        : new Reply.Failed<>(Refusals.miscounted(measurement, announced, values.size()));
  }

  private static boolean isEmpty(Reply<List<Double>> reply) {
    return reply instanceof Reply.Answered<List<Double>> answered && answered.value().isEmpty();
  }

  private Reply<List<Double>> part(Dialogue dialogue, Measurement measurement, int part) {
    return dialogue.ask(
        address, Command.sendData(address, part), line -> DataAnswer.read(line, measurement));
  }

  private Progress done(Dialogue dialogue, Measurement measurement, Reply<List<Double>> values) {
    Taken taken = new Taken(++count, dialogue.turn().nanos(), values);
    missed = failedBy(values, Outcome.NoAnswer.class);
    if (!failedBy(values, Outcome.WireGone.class)) {
      latest.put(measurement, taken);
    }
    return new Progress.Done(taken);
  }

  private static boolean failedBy(Reply<List<Double>> values, Class<? extends Outcome> why) {
    return values instanceof Reply.Failed<List<Double>> failed && why.isInstance(failed.outcome());
  }
}
