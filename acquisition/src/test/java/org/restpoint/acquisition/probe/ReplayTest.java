package org.restpoint.acquisition.probe;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.Consumer;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.restpoint.acquisition.check.CheckPlan;
import org.restpoint.acquisition.event.Answer;
import org.restpoint.acquisition.event.CheckRole;
import org.restpoint.acquisition.event.Event;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.acquisition.instruction.InstructionReader;
import org.restpoint.config.station.Calibrate.Every;
import org.restpoint.config.station.Routine;
import org.restpoint.stability.rest.ForecastRule;

/** Random days at the bench and in the stream, each from a fixed seed. */
class ReplayTest {

  private static final Instant START = Bench.START.plusMillis(137);

  private static final List<String> INSTRUCTIONS =
      List.of(
          "{\"do\":\"calibrate\",\"standard\":\"low\"}",
          "{\"do\":\"calibrate\",\"standard\":\"mid\"}",
          "{\"do\":\"calibrate\",\"standard\":\"high\"}",
          "{\"do\":\"calibrate\",\"standard\":\"none\"}",
          "{\"id\":\"m\",\"do\":\"measure\",\"sample\":{\"number\":\"S-1\",\"notes\":\"pH 6.9\"}}",
          "{\"do\":\"measure\"}",
          "{\"do\":\"verify\",\"standard\":\"mid\"}",
          "{\"do\":\"soak\",\"minutes\":1}",
          "{\"do\":\"rinsed\"}",
          "{\"do\":\"rinsed\"}",
          "{\"do\":\"replaced\"}",
          "{\"do\":\"accept-standard\"}",
          "{\"do\":\"cancel\"}");

  private static final CheckPlan CHECKED =
      Changes.plan(Map.of(CheckRole.CHECK_STANDARD, new Every.Samples(2)));

  /** Something that comes in. */
  private record Input(Instant time, boolean isReading, Consumer<ProbeRoutine> act) {}

  static LongStream seeds() {
    return LongStream.range(0, 60);
  }

  private static Setup setup(long seed) {
    Setup setup =
        Setup.nitrate()
            .giveUpAfter(Duration.ofSeconds(40))
            .notBefore(Duration.ofSeconds(seed % 2 * 3))
            .restandardize("mid", new Every.Samples(2))
            .validFor(Duration.ofMinutes(30))
            .with(Changes.checked(CHECKED));
    if (seed / 3 % 3 == 2) {
      setup.rule(new ForecastRule(2));
    }
    return switch ((int) (seed % 3)) {
      case 0 -> setup;
      case 1 -> setup.routine(new Routine.EachInterval(Duration.ofSeconds(20)));
      default -> setup.routine(new Routine.EachRest(Duration.ofSeconds(25)));
    };
  }

  private static List<Input> script(long seed) {
    Random random = new Random(seed);
    Electrode electrode = new Electrode(-1, 0.97);
    List<Input> script = new ArrayList<>();
    Instant now = START;
    double concentration = 1e-3;
    double celsius = 20;
    while (script.size() < 1500) {
      now = now.plusMillis(random.nextInt(20) == 0 ? random.nextInt(50_000) : stepMillis(random));
      Instant time = now;
      if (random.nextInt(18) == 0) {
        String instruction = INSTRUCTIONS.get(random.nextInt(INSTRUCTIONS.size()));
        concentration = solution(instruction, random);
        celsius = 20 + random.nextInt(50) / 10.0;
        script.add(
            new Input(
                time,
                false,
                routine ->
                    routine.instruct(time, InstructionReader.read(instruction).instruction())));
      } else {
        double noise = random.nextInt(12) == 0 ? 5 * random.nextGaussian() : 0.02;
        double millivolts =
            electrode.millivolts(concentration, celsius) + noise * random.nextDouble();
        Temperature temperature =
            random.nextInt(60) == 0
                ? new Temperature.Missing("none", "none")
                : new Temperature.Known(celsius, 0.2, random.nextInt(10) == 0);
        script.add(
            new Input(time, true, routine -> routine.reading(time, millivolts, temperature)));
      }
    }
    return script;
  }

  private static long stepMillis(Random random) {
    return switch (random.nextInt(4)) {
      case 0 -> 0;
      case 1 -> random.nextInt(3000);
      default -> 1000;
    };
  }

  private static double solution(String instruction, Random random) {
    if (random.nextInt(8) == 0) {
      return 2e-4;
    }
    if (instruction.contains("low")) {
      return 5e-3 / 14.007;
    }
    if (instruction.contains("mid")) {
      return 20e-3 / 14.007;
    }
    return instruction.contains("high") ? 100e-3 / 14.007 : 1e-4 * (1 + 50 * random.nextDouble());
  }

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
  @MethodSource("seeds")
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
  @MethodSource("seeds")
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
  @MethodSource("seeds")
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
          && takenUp < 40) {
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
    seeds()
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
