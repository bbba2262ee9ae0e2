package org.restpoint.acquisition.workday;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.acquisition.event.*;
import org.restpoint.acquisition.replay.InstructionFile;
import org.restpoint.acquisition.replay.Replay;
import org.restpoint.acquisition.service.Stations;

class WorkdayReplayTest {
  @TempDir private Path folder;

  @Test
  void day() throws IOException {
    List<String> rows = new ArrayList<>(List.of("time,probe,millivolts,celsius"));
    List<String> told = new ArrayList<>();
    for (Moment moment : Workday.of(folder)) {
      if (moment instanceof Moment.Read read) rows.add(read.row());
      else if (moment instanceof Moment.Told t) told.add(t.line());
      else if (moment instanceof Moment.PowerCut cut)
        told.add(new Moment.Told(cut.time(), "\"do\":\"cancel\"").line());
    }
    List<Event> events = new ArrayList<>();
    List<String> complaints = new ArrayList<>();
    long t = System.nanoTime();
    new Replay(Stations.read(folder, Table.text("station.yaml")), false, events::add, complaints::add)
        .run(Files.write(folder.resolve("r.csv"), rows), InstructionFile.read(Files.write(folder.resolve("i.jsonl"), told)));
    System.out.println("REPLAY " + (System.nanoTime() - t) / 1e9 + " s " + rows.size());
    complaints.forEach(System.out::println);
    for (Event e : events) {
      if (e instanceof Result r) System.out.println("R " + r.time() + " " + r.revision() + " " + r.sample().map(s->s.path("number").asText()).orElse("-") + " " + r.outcome() + " " + r.reported().map(x -> x.relation() + x.value() + " ±" + x.uncertainty() + x.unit() + x.kind()).orElse("") + r.flags() + r.verification().map(v -> v.role() + v.verdict()).orElse("") + r.guidance().map(g -> g.toString()).orElse(""));
      if (e instanceof Calibration c) System.out.println("C " + c.time() + c.verdict() + c.flags() + c.reasons() + c.causes()+ c.slopePercent());
      if (e instanceof Notice n) System.out.println("N " + n.time() + n.code() + n.text());
    }
    Files.writeString(Path.of("/tmp/day/events.jsonl"), String.join("\n", events.stream().map(EventJson::write).toList()));
    assertThat(complaints).isEmpty();
  }
}
