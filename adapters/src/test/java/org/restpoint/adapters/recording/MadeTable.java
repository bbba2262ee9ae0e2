package org.restpoint.adapters.recording;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import org.restpoint.adapters.quantity.Meanings;
import org.restpoint.adapters.recording.TextForm.DecimalMark;
import org.restpoint.adapters.recording.TextForm.Delimiter;
import org.restpoint.stability.reading.Reading;

/** A table with what may stand between its rows. */
final class MadeTable {

  private static final Instant T = Instant.parse("2026-10-24T22:00:00Z");
  private static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");
  private static final String SPLIT = "dd.MM.yyyy HH:mm:ss.SSS";

  private final Random random;
  private final List<Role> roles = new ArrayList<>(List.of(Role.POTENTIAL, Role.TEMPERATURE));
  private final List<ProbeReading> rows = new ArrayList<>();
  private final RecordingLayout layout;
  private final Charset charset;
  private final boolean marked;
  private final String lineEnd;
  private int repetitions;
  private int gaps;

  /** A table in any layout. */
  MadeTable(Random random) {
    this.random = random;
    this.marked = random.nextBoolean();
    this.lineEnd = random.nextBoolean() ? "\n" : "\r\n";
    Delimiter delimiter = any(Delimiter.class);
    DecimalMark mark = delimiter == Delimiter.COMMA ? DecimalMark.POINT : any(DecimalMark.class);
    Encoding encoding = any(Encoding.class);
    charset =
        switch (encoding) {
          case UTF_8 -> StandardCharsets.UTF_8;
          case UTF_16 ->
              random.nextBoolean() ? StandardCharsets.UTF_16BE : StandardCharsets.UTF_16LE;
          case LATIN_1 -> StandardCharsets.ISO_8859_1;
        };
    TimeForm time = time();
    roles.add(Role.TIME);
    roles.add(Role.OTHER);
    if (time instanceof TimeForm.Pattern) {
      roles.add(Role.DATE);
    }
    if (random.nextBoolean()) {
      roles.add(Role.PROBE);
    }
    Collections.shuffle(roles, random);
    boolean header = random.nextBoolean();
    layout =
        new RecordingLayout(
            new TextForm(
                delimiter, mark, encoding, Optional.of('#').filter(c -> random.nextBoolean())),
            header,
            new RecordingColumns(
                column(Role.DATE, header),
                column(Role.TIME, header),
                column(Role.PROBE, header),
                column(Role.POTENTIAL, header),
                column(Role.TEMPERATURE, header)),
            Meanings.MILLIVOLTS_AND_CELSIUS,
            time,
            Set.of("NaN"));
  }

  private TimeForm time() {
    return switch (random.nextInt(5)) {
      case 0 -> new TimeForm.Iso(Optional.of(BERLIN).filter(zone -> random.nextBoolean()));
      case 1 -> new TimeForm.SecondsFromZero();
      case 2 -> new TimeForm.SecondsSince1970();
      case 3 -> new TimeForm.MillisecondsSince1970();
      default -> new TimeForm.Pattern(SPLIT, Optional.of(BERLIN));
    };
  }

  private Optional<Column> column(Role role, boolean header) {
    int at = roles.indexOf(role);
    if (at < 0) {
      return Optional.empty();
    }
    return Optional.of(
        header && random.nextBoolean()
            ? new Column.Headed(heading(role))
            : new Column.Numbered(at + 1));
  }

  private String heading(Role role) {
    return role == Role.TEMPERATURE ? "T/\u00B0C" : "the " + role;
  }

  /** How it is written. */
  RecordingLayout layout() {
    return layout;
  }

  /** Its readings, as it was written last. */
  List<ProbeReading> rows() {
    return rows;
  }

  /** How many of its rows have no number. */
  int gaps() {
    return gaps;
  }

  /** How often its header stands in it again. */
  int repetitions() {
    return repetitions;
  }

  /** Writes it with rows, gaps and what may stand between them, new ones each time. */
  byte[] bytes() {
    rows.clear();
    repetitions = 0;
    gaps = 0;
    StringBuilder text =
        new StringBuilder(marked && !charset.equals(StandardCharsets.ISO_8859_1) ? "\uFEFF" : "");
    between(text);
    String header = line(roles.stream().map(this::heading).toList());
    if (layout.header()) {
      text.append(header);
    }
    Instant now = T;
    for (int row = random.nextInt(40); row > 0; row--) {
      between(text);
      if (layout.header() && random.nextInt(10) == 0) {
        text.append(header);
        repetitions++;
      }
      now = now.plusMillis(random.nextInt(3) == 0 ? 0 : random.nextInt(1_000_000));
      text.append(row(now));
    }
    return text.toString().getBytes(charset);
  }

  private void between(StringBuilder text) {
    text.append(random.nextInt(5) == 0 ? lineEnd : "");
    if (layout.text().comment().isPresent() && random.nextInt(5) == 0) {
      text.append("# \"made up").append(lineEnd);
    }
  }

  private String row(Instant now) {
    String probe = roles.contains(Role.PROBE) ? "p" + random.nextInt(3) : "";
    boolean gap = random.nextInt(8) == 0;
    boolean thermometer = roles.contains(Role.PROBE) && random.nextInt(8) == 0;
    OptionalDouble millivolts =
        gap || thermometer
            ? OptionalDouble.empty()
            : OptionalDouble.of(random.nextInt(4_000_000) / 1e4 - 200);
    OptionalDouble celsius =
        gap || (!thermometer && random.nextBoolean())
            ? OptionalDouble.empty()
            : OptionalDouble.of(random.nextGaussian() * 1e-7);
    if (gap) {
      gaps++;
    } else {
      rows.add(new ProbeReading(probe, new Reading(now, millivolts, celsius)));
    }
    return line(
        roles.stream()
            .map(
                role ->
                    switch (role) {
                      case DATE -> formatted(now, SPLIT.split(" ", 2)[0]);
                      case TIME -> time(now);
                      case PROBE -> probe;
                      case POTENTIAL -> number(millivolts);
                      case TEMPERATURE -> number(celsius);
                      case OTHER -> "; \"so\", it is";
                    })
            .toList());
  }

  private String time(Instant now) {
    long millis = now.toEpochMilli();
    String decimals = "%d%s%03d".formatted(millis / 1_000, mark(), millis % 1_000);
    if (layout.time() instanceof TimeForm.Iso iso) {
      String local = formatted(now, "yyyy-MM-dd HH:mm:ss.SSS");
      return iso.zone().isPresent() && random.nextBoolean()
          ? local
          : random.nextBoolean() ? now.toString() : formatted(now, "yyyy-MM-dd'T'HH:mm:ss.SSSxx");
    }
    if (layout.time() instanceof TimeForm.MillisecondsSince1970) {
      return String.valueOf(millis);
    }
    return layout.time() instanceof TimeForm.Pattern
        ? formatted(now, SPLIT.split(" ", 2)[1])
        : decimals;
  }

  private String formatted(Instant now, String pattern) {
    return DateTimeFormatter.ofPattern(pattern).format(now.atZone(BERLIN));
  }

  private String number(OptionalDouble value) {
    return value.isEmpty()
        ? random.nextBoolean() ? "" : "NaN"
        : Double.toString(value.getAsDouble()).replace('.', mark());
  }

  private char mark() {
    return layout.text().decimalMark().character();
  }

  private String line(List<String> values) {
    String delimiter = String.valueOf(layout.text().delimiter().character());
    return String.join(delimiter, values.stream().map(this::quoted).toList()) + lineEnd;
  }

  private String quoted(String value) {
    boolean needed = value.chars().anyMatch(c -> ",;\t\"".indexOf(c) >= 0);
    return needed || random.nextInt(10) == 0 ? '"' + value.replace("\"", "\"\"") + '"' : value;
  }

  @Override
  public String toString() {
    return layout + " " + charset;
  }

  private <E extends Enum<E>> E any(Class<E> choices) {
    E[] all = choices.getEnumConstants();
    return all[random.nextInt(all.length)];
  }
}
