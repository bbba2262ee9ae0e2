package org.restpoint.acquisition.probe;

import static org.assertj.core.api.Assertions.assertThat;
import static org.restpoint.acquisition.probe.RandomDays.START;
import static org.restpoint.acquisition.probe.RandomDays.script;
import static org.restpoint.acquisition.probe.RandomDays.setup;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.restpoint.acquisition.event.Answer;
import org.restpoint.acquisition.event.Event;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.acquisition.probe.RandomDays.Input;
import org.restpoint.config.station.Routine;

/** Random days come out alike however they are given. */
class ReplayTest {

  /** Keeps what is said as it is written. */
  private static final class Written implements Output {

    private final List<String> lines = new ArrayList<>();

    @Override
    public void event(Event event) {
      lines.add(EventJson.write(event));
    }

    @Override
    public void answer(Answer answer) {
      lines.add(EventJson.write(answer));
    }

    @Override
    public void confide(Answer answer) {
      answer(answer);
    }
  }

  private static ProbeRoutine begun(long seed, ProbeMemory memory, Instant now, Written out) {
    ProbeRoutine routine = new ProbeRoutine(setup(seed).settings(), memory, out, Archive.empty());
    routine.begin(now);
    return routine;
  }

  /** Whether nothing is being read: then its memory is all there is. */
  private static boolean isBetweenAttempts(ProbeMemory memory, Instant now) {
    boolean inStream =
        !memory.away()
            && memory.stream()
                .filter(stream -> stream.restMillivolts().isEmpty())
                .filter(stream -> stream.next().map(next -> !next.isAfter(now)).orElse(true))
                .isPresent();
    return memory.underway().isEmpty() && !inStream;
  }

  private static boolean isBetweenAttempts(long seed, ProbeMemory memory, Instant now) {
    boolean atBench = setup(seed).settings().routine() instanceof Routine.Instructed;
    return atBench ? memory.underway().isEmpty() : isBetweenAttempts(memory, now);
  }

  @ParameterizedTest
  @MethodSource("org.restpoint.acquisition.probe.RandomDays#seeds")
  void theSameInputGivesTheSameEventsHoweverOftenTimeIsLetPass(long seed) {
    Written once = new Written();
    Written ticking = new Written();
    ProbeRoutine first = begun(seed, ProbeMemory.blank(), START, once);
    ProbeRoutine second = begun(seed, ProbeMemory.blank(), START, ticking);
    Random random = new Random(~seed);
    Instant now = START;
    for (Input input : script(seed)) {
      input.act().accept(first);
      while (random.nextInt(3) > 0) {
        long span = Duration.between(now, input.time()).toMillis();
        now = now.plusMillis(random.nextLong(span + 1));
        second.elapse(now);
      }
      if (second.due().filter(due -> !due.isAfter(input.time())).isPresent()) {
        second.elapse(second.due().orElseThrow());
      }
      input.act().accept(second);
      now = input.time();
    }
    assertThat(once.lines).hasSizeGreaterThan(100);
    assertThat(ticking.lines).isEqualTo(once.lines);
    assertThat(second.memory()).isEqualTo(first.memory());
  }

  @ParameterizedTest
  @MethodSource("org.restpoint.acquisition.probe.RandomDays#seeds")
  void eachEventHasItsOwnIdAndComesInTheOrderOfItsTime(long seed) {
    List<String> ids = new ArrayList<>();
    List<Instant> times = new ArrayList<>();
    Output output =
        new Output() {
          @Override
          public void event(Event event) {
            times.add(event.time());
            String line = EventJson.write(event);
            JsonNode id = Bench.parsed(line).get("id");
            if (id != null) {
              ids.add(id.textValue());
            }
          }

          @Override
          public void answer(Answer answer) {
            times.add(answer.time());
          }

          @Override
          public void confide(Answer answer) {
            answer(answer);
          }
        };
    ProbeRoutine routine =
        new ProbeRoutine(setup(seed).settings(), ProbeMemory.blank(), output, Archive.empty());
    routine.begin(START);
    script(seed).forEach(input -> input.act().accept(routine));
    assertThat(times).isSorted();
    assertThat(ids).doesNotHaveDuplicates();
  }

  @ParameterizedTest
  @MethodSource("org.restpoint.acquisition.probe.RandomDays#seeds")
  void aRoutineTakenUpFromItsMemoryGoesOnAsIfNothingHadBeen(long seed) {
    List<Input> script = script(seed);
    Written all = new Written();
    ProbeRoutine routine = begun(seed, ProbeMemory.blank(), START, all);
    int takenUp = 0;
    List<Written> continuations = new ArrayList<>();
    List<ProbeRoutine> others = new ArrayList<>();
    List<Integer> from = new ArrayList<>();
    for (Input input : script) {
      input.act().accept(routine);
      others.forEach(input.act());
      if (input.isReading()
          && isBetweenAttempts(seed, routine.memory(), input.time())
          && takenUp < 12) {
        takenUp++;
        ProbeMemory memory = Bench.written(routine.memory());
        assertThat(memory).isEqualTo(routine.memory());
        Written out = new Written();
        others.add(begun(seed, memory, input.time(), out));
        assertThat(out.lines).as("what is said on going on: the state").hasSize(1);
        out.lines.clear();
        continuations.add(out);
        from.add(all.lines.size());
      }
    }
    assertThat(takenUp).isPositive();
    for (int i = 0; i < takenUp; i++) {
      assertThat(continuations.get(i).lines)
          .isEqualTo(all.lines.subList(from.get(i), all.lines.size()));
      assertThat(others.get(i).memory()).isEqualTo(routine.memory());
    }
  }

  @Test
  void theRandomDaysHoldWhatCanHappen() {
    Written all = new Written();
    RandomDays.seeds()
        .forEach(
            seed -> {
              ProbeRoutine routine = begun(seed, ProbeMemory.blank(), START, all);
              script(seed).forEach(input -> input.act().accept(routine));
            });
    for (String sight :
        List.of(
            "\"outcome\":\"settled\"",
            "\"outcome\":\"unsettled\"",
            "\"outcome\":\"refused\"",
            "\"quality\":9",
            "\"verdict\":\"accepted\",\"reasons\":[],\"points\"",
            "\"slopeFrom\":\"last accepted\"",
            "\"slopeFrom\":\"ideal\"",
            "slope-low",
            "slope-high",
            "busy",
            "cancelled",
            "check-off",
            "standard-due",
            "in-maintenance",
            "temperature-stale",
            "\"responseReadings\":3",
            "electrode-replaced",
            "nothing-to-accept",
            "no-line",
            "standard-overridden",
            "no-temperature",
            "\"state\":\"soaking\"")) {
      assertThat(all.lines).as(sight).anyMatch(line -> line.contains(sight));
    }
  }
}
