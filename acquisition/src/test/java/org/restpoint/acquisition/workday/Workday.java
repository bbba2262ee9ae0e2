package org.restpoint.acquisition.workday;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.acquisition.records.SampleList;

/**
 * The working day of {@code workday/plan.csv} as it goes on: what the meter sends every five
 * seconds while there is power and it is awake, and what is told in between.
 */
final class Workday {

  static final String PROBE = "no3-a";
  static final String STATION = "workday-bench";
  static final Instant START = Instant.parse("2026-05-28T13:00:00Z");

  private static final int INTERVAL_SECONDS = 5;

  /** Then the meter goes to sleep until something is done with it. */
  private static final int AWAKE_SECONDS = 80;

  private static final LocalDate DATE = LocalDate.parse("2026-05-28");
  private static final ZoneOffset PLACE = ZoneOffset.ofHours(-5);

  private final Path folder;
  private final MadeElectrode electrode = new MadeElectrode();
  private final List<Moment> moments = new ArrayList<>();
  private boolean power = true;
  private Instant now = START;
  private Instant awakeUntil = START;

  private Workday(Path folder) {
    this.folder = folder;
  }

  /** The whole day, in order; {@code folder} takes the list of samples. */
  static List<Moment> of(Path folder) {
    Workday day = new Workday(folder);
    Table.rows("plan.csv").forEach(day::step);
    day.readUntil(day.now.plusSeconds(60));
    return day.moments;
  }

  /** A time of the day by the clock on the wall. */
  static Instant time(String wall) {
    return LocalTime.parse(wall).atDate(DATE).toInstant(PLACE);
  }

  private void step(Table.Row row) {
    Instant time = time(row.cell("time"));
    readUntil(time);
    String holds = row.cell("mg/L");
    electrode.put(row.cell("vessel"), holds.isEmpty() ? Double.NaN : Double.parseDouble(holds));
    String told = row.cell("tell");
    awakeUntil = time.plusSeconds(AWAKE_SECONDS);
    switch (told) {
      case "(power cut)" -> {
        power = false;
        moments.add(new Moment.PowerCut(time));
      }
      case "(power back)" -> {
        power = true;
        moments.add(new Moment.PowerBack(time));
      }
      case "(list)" -> list(time);
      default -> moments.add(new Moment.Told(time, fields(told)));
    }
  }

  private void readUntil(Instant end) {
    while (now.isBefore(end)) {
      now = now.plusSeconds(INTERVAL_SECONDS);
      double hours = Duration.between(START, now).toSeconds() / 3600.0;
      double millivolts = electrode.read(INTERVAL_SECONDS, hours);
      if (power && !now.isAfter(awakeUntil)) {
        moments.add(new Moment.Read(now, millivolts));
      }
    }
  }

  /** One after the other, a millisecond apart, as the service takes what comes at once. */
  private void list(Instant time) {
    try {
      Path list = Files.writeString(folder.resolve("samples.csv"), Table.text("samples.csv"));
      Instant each = time;
      for (SampleList.Row row : SampleList.read(list, time)) {
        String record = EventJson.write(row.told());
        moments.add(new Moment.Told(each, "\"do\":\"sample\",\"sample\":" + record));
        each = each.plusMillis(1);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** {@code measure sample=S-01} as the fields of an instruction. */
  private static String fields(String told) {
    String[] words = told.split(" ", -1);
    StringBuilder fields = new StringBuilder("\"do\":\"" + words[0] + "\"");
    Arrays.stream(words)
        .skip(1)
        .map(word -> word.split("=", 2))
        .forEach(pair -> fields.append(",\"%s\":\"%s\"".formatted(pair[0], pair[1])));
    return fields.toString();
  }
}
