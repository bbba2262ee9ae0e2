package org.restpoint.acquisition.workday;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.acquisition.replay.InstructionFile;
import org.restpoint.acquisition.replay.Replay;
import org.restpoint.acquisition.service.Stations;

/** What {@code replay} makes of a recording and its instructions. */
final class Replayed {

  private Replayed() {}

  /**
   * Of the day's plan. A recording does not show a power cut: in its place the reading is cancelled
   * at that moment, and no reading comes until the power is back.
   */
  static Heard plan(Path folder, List<Moment> moments) {
    List<String> rows = new ArrayList<>(List.of("time,probe,millivolts,celsius"));
    List<String> told = new ArrayList<>();
    for (Moment moment : moments) {
      if (moment instanceof Moment.Read read) {
        rows.add(read.row());
      } else if (moment instanceof Moment.Told instruction) {
        told.add(instruction.line());
      } else if (moment instanceof Moment.PowerCut cut) {
        told.add(new Moment.Told(cut.time(), "\"do\":\"cancel\"").line());
      }
    }
    return files(folder, String.join("\n", rows), String.join("\n", told));
  }

  /** Of files as {@code records} writes them. */
  static Heard files(Path folder, String readings, String instructions) {
    Heard heard = new Heard();
    try {
      Path recording = Files.writeString(folder.resolve("readings.csv"), readings);
      Path told = Files.writeString(folder.resolve("instructions.jsonl"), instructions);
      new Replay(
              Stations.read(folder, Table.text("station.yaml")),
              false,
              event -> heard.take(Heard.parse(EventJson.write(event))),
              complaint -> {})
          .run(recording, InstructionFile.read(told));
      return heard;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
