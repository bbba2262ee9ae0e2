package org.restpoint.acquisition.probe;

import java.util.List;
import java.util.Map;
import org.restpoint.acquisition.event.CheckRole;
import org.restpoint.acquisition.event.Result;
import org.restpoint.config.station.Calibrate.Every;

/** A bench whose station file sets checks, and what they find there. */
final class CheckedBench {

  static final String SECOND = "{'do':'verify','standard':'second'}";
  static final String BLANK = "{'do':'verify','role':'blank'}";

  static Setup setup(Map<CheckRole, Every> every) {
    return Setup.nitrate().with(Changes.checked(Changes.plan(every)));
  }

  static Bench bench(Map<CheckRole, Every> every) {
    return Bench.of(setup(every)).calibrate("low").calibrate("high");
  }

  static Bench bench() {
    return bench(Map.of());
  }

  static String of(String role, String sample) {
    return "{'do':'verify','role':'%s','sample':'%s'}".formatted(role, sample);
  }

  static Bench sample(Bench bench, int number) {
    return bench.read("{'do':'measure','sample':'S-%d'}".formatted(number), 20);
  }

  /** The last check; after one that failed come the results that it doubts. */
  static Result check(Bench bench) {
    return bench.all(Result.class).stream()
        .filter(result -> result.verification().isPresent())
        .reduce((earlier, later) -> later)
        .orElseThrow();
  }

  static List<String> revised(Bench bench) {
    return bench.all(Result.class).stream()
        .filter(result -> result.revision() > 1)
        .map(
            result ->
                "%s %d %s"
                    .formatted(
                        result.sample().orElseThrow().path("number").textValue(),
                        result.revision(),
                        String.join(" ", result.flags())))
        .toList();
  }

  private CheckedBench() {}
}
