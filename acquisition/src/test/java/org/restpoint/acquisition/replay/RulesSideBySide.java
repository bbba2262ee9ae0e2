package org.restpoint.acquisition.replay;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.IntToDoubleFunction;
import org.restpoint.acquisition.event.Event;
import org.restpoint.acquisition.service.Stations;

/**
 * One electrode read by several rules of rest at once, each under a probe of its own: the standards
 * low and high, then a sample, a reading a second at 25 °C.
 *
 * @param rules the settle section of each probe
 * @param slope the slopes that are accepted
 * @param standardSeconds how long it stands in each standard
 * @param sampleSeconds how long in the sample
 */
record RulesSideBySide(
    Map<String, String> rules, String slope, int standardSeconds, int sampleSeconds) {

  /** What is said of a potential, given in mV by the second. */
  List<Event> replay(Path folder, IntToDoubleFunction millivolts) throws IOException {
    List<String> rows = new ArrayList<>(List.of("time,probe,millivolts,celsius"));
    for (int second = 0; second < 2 * standardSeconds + sampleSeconds; second++) {
      double seen = millivolts.applyAsDouble(second);
      for (String probe : rules.keySet()) {
        rows.add(String.format(Locale.ROOT, "%d,%s,%.4f,25", second, probe, seen));
      }
    }
    List<String> told = new ArrayList<>();
    tell(told, 0, "\"do\":\"calibrate\",\"standard\":\"low\"");
    tell(told, standardSeconds, "\"do\":\"calibrate\",\"standard\":\"high\"");
    tell(told, 2 * standardSeconds, "\"do\":\"measure\"");
    Path recording = Files.write(folder.resolve("recording.csv"), rows);
    Path instructions = Files.write(folder.resolve("told.jsonl"), told);
    List<Event> events = new ArrayList<>();
    List<String> complaints = new ArrayList<>();
    new Replay(Stations.read(folder, station()), false, events::add, complaints::add)
        .run(recording, InstructionFile.read(instructions));
    assertThat(complaints).isEmpty();
    return events;
  }

  private void tell(List<String> told, int second, String what) {
    for (String probe : rules.keySet()) {
      told.add("{\"time\":%d,\"probe\":\"%s\",%s}".formatted(second, probe, what));
    }
  }

  private String station() {
    StringBuilder text =
        new StringBuilder(
            """
            station: farm
            broker: embedded
            standards:
              low:  { concentration: 5 mg/L,   basis: as-N }
              high: { concentration: 100 mg/L, basis: as-N }
            probes:
            """);
    rules.forEach(
        (name, rule) ->
            text.append(
                """
                  %s:
                    analyte: nitrate
                    basis: as-N
                    link: { recording: { file: any.csv } }
                    temperature: { from: reading }
                    settle: { %s }
                    calibrate: { standards: [low, high], slope: %s }
                """
                    .formatted(name, rule, slope)));
    return text.toString();
  }
}
