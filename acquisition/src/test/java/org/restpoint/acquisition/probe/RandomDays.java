package org.restpoint.acquisition.probe;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.Consumer;
import java.util.stream.LongStream;
import org.restpoint.acquisition.check.CheckPlan;
import org.restpoint.acquisition.event.CheckRole;
import org.restpoint.acquisition.instruction.InstructionReader;
import org.restpoint.config.station.Calibrate.Every;
import org.restpoint.config.station.Routine;
import org.restpoint.stability.rest.ForecastRule;

/** Random days at the bench and in the stream, each from a fixed seed. */
final class RandomDays {

  static final Instant START = Bench.START.plusMillis(137);

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
  record Input(Instant time, boolean isReading, Consumer<ProbeRoutine> act) {}

  static LongStream seeds() {
    return LongStream.range(0, 18);
  }

  static Setup setup(long seed) {
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

  static List<Input> script(long seed) {
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

  private RandomDays() {}
}
