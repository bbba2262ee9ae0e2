package org.restpoint.adapters.recording;

import de.siegmar.fastcsv.reader.CsvCallbackHandler;
import de.siegmar.fastcsv.reader.RecordType;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.restpoint.adapters.text.Excerpt;
import org.restpoint.stability.reading.Reading;

/**
 * Turns the values of each row into a {@link Row} as the CSV parser finds them, without making text
 * of them. It throws nothing: what is wrong with a row is a {@link RowProblem}.
 */
final class RecordingRows extends CsvCallbackHandler<Row> {

  private static final int COLUMNS = 4;

  /** The reason of a row that nothing is wrong with. */
  private static final String NONE = "";

  private static final String RUNS_OVER =
      "a quoted value runs over the end of the line; is a closing quotation mark missing?";

  /** Names kept so that one is not made anew for each row; more than a station has probes. */
  private static final int NAMES_KEPT = 64;

  private final TimeField time;
  private final DecimalField decimal = new DecimalField();
  private final List<String> names = new ArrayList<>();
  private @Nullable List<String> header = new ArrayList<>();
  private RecordType type = RecordType.DATA;
  private long line;
  private int columns;
  private String probe = "";
  private OptionalDouble millivolts = OptionalDouble.empty();
  private OptionalDouble celsius = OptionalDouble.empty();
  private String reason = NONE;
  private TimeField.@Nullable Form form;
  private long latestMillis = Long.MIN_VALUE;

  RecordingRows(Instant zero) {
    this.time = new TimeField(zero);
  }

  /** The line the row under way starts on. */
  long line() {
    return line;
  }

  @Override
  protected RecordType getRecordType() {
    return type;
  }

  @Override
  protected int getFieldCount() {
    return columns;
  }

  @Override
  protected void beginRecord(long startingLineNumber) {
    line = startingLineNumber;
    columns = 0;
    reason = NONE;
    type = RecordType.DATA;
  }

  @Override
  protected void setComment(char[] text, int offset, int length) {
    throw new IllegalStateException("the parser is told to know no comments");
  }

  @Override
  protected void setEmpty() {
    type = RecordType.EMPTY;
  }

  @Override
  protected void addField(char[] text, int offset, int length, boolean quoted) {
    int from = offset;
    int to = offset + length;
    while (from < to && isSpace(text[from])) {
      from++;
    }
    while (from < to && isSpace(text[to - 1])) {
      to--;
    }
    int column = columns++;
    if (header != null) {
      header.add(new String(text, from, to - from));
    } else if (reason.isEmpty()) {
      reason = quoted && runsOver(text, from, to) ? RUNS_OVER : take(column, text, from, to);
    }
  }

  @Override
  protected Row buildRecord() {
    List<String> first = header;
    if (first != null && type == RecordType.DATA) {
      header = null;
      return new HeaderRow(line, String.join(",", first));
    }
    if (reason.isEmpty() && columns != COLUMNS) {
      reason = "expected %d values, found %d".formatted(COLUMNS, columns);
    }
    return reason.isEmpty() ? reading() : new RowProblem(line, reason);
  }

  private Row reading() {
    long millis = time.epochMillis();
    if (form != null && form != time.form()) {
      return new RowProblem(
          line,
          time.form() == TimeField.Form.SECONDS
              ? "the time is in seconds, in the rows before it it is ISO 8601"
              : "the time is ISO 8601, in the rows before it it is in seconds");
    }
    if (millis < latestMillis) {
      return new RowProblem(
          line,
          "the time %s goes back behind %s of a row before it"
              .formatted(Instant.ofEpochMilli(millis), Instant.ofEpochMilli(latestMillis)));
    }
    try {
      Reading reading = new Reading(Instant.ofEpochMilli(millis), millivolts, celsius);
      form = time.form();
      latestMillis = millis;
      return new ProbeReading(probe, reading);
    } catch (IllegalArgumentException e) {
      return new RowProblem(line, String.valueOf(e.getMessage()));
    }
  }

  /** Takes one value; what is wrong with it, or nothing. */
  private String take(int column, char[] text, int from, int to) {
    return switch (column) {
      case 0 ->
          time.read(text, from, to)
              ? NONE
              : "the time \"%s\" is neither ISO 8601 in UTC (2026-04-02T14:03:00.250Z) nor seconds (12.25)"
                  .formatted(excerpt(text, from, to));
      case 1 -> {
        probe = name(text, from, to);
        yield from == to ? "the probe has no name" : NONE;
      }
      case 2 -> {
        boolean number = from == to || decimal.read(text, from, to);
        millivolts = from < to ? OptionalDouble.of(decimal.value()) : OptionalDouble.empty();
        yield number ? NONE : notANumber("millivolts", text, from, to);
      }
      case 3 -> {
        boolean number = from == to || decimal.read(text, from, to);
        celsius = from < to ? OptionalDouble.of(decimal.value()) : OptionalDouble.empty();
        yield number ? NONE : notANumber("celsius", text, from, to);
      }
      default -> NONE;
    };
  }

  private static String notANumber(String column, char[] text, int from, int to) {
    return "%s \"%s\" is not a number".formatted(column, excerpt(text, from, to));
  }

  private String name(char[] text, int from, int to) {
    if (isNamed(probe, text, from, to)) {
      return probe;
    }
    for (String known : names) {
      if (isNamed(known, text, from, to)) {
        return known;
      }
    }
    String name = new String(text, from, to - from);
    if (names.size() < NAMES_KEPT) {
      names.add(name);
    }
    return name;
  }

  private static boolean isNamed(String name, char[] text, int from, int to) {
    if (name.length() != to - from) {
      return false;
    }
    for (int i = 0; i < name.length(); i++) {
      if (name.charAt(i) != text[from + i]) {
        return false;
      }
    }
    return true;
  }

  private static String excerpt(char[] text, int from, int to) {
    return Excerpt.of(new String(text, from, to - from));
  }

  private static boolean runsOver(char[] text, int from, int to) {
    for (int i = from; i < to; i++) {
      if (text[i] == '\n' || text[i] == '\r') {
        return true;
      }
    }
    return false;
  }

  private static boolean isSpace(char c) {
    return c == ' ' || c == '\t';
  }
}
