package org.restpoint.adapters.recording;

import de.siegmar.fastcsv.reader.CsvCallbackHandler;
import de.siegmar.fastcsv.reader.RecordType;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.restpoint.adapters.text.Excerpt;
import org.restpoint.stability.reading.Reading;

/**
 * Turns the values of each row into a {@link Row} as the CSV parser finds them, without making text
 * of them. It throws nothing: what is wrong with a row is a {@link SkippedLine}.
 */
final class RecordingRows extends CsvCallbackHandler<Row> {

  /** The reason of a row that nothing is wrong with. */
  private static final String NONE = "";

  private static final String RUNS_OVER =
      "a quoted value runs over the end of the line; is a closing quotation mark missing?";

  private final RecordingLayout layout;
  private final TimeText time;
  private final DecimalField decimal;
  private final String[] missing;
  private final RowClock order;
  private final RowValues values;
  private final ProbeNames names = new ProbeNames();
  private @Nullable List<String> header;
  private BoundColumns columns;
  private RecordType type = RecordType.DATA;
  private long firstLine;
  private long line;
  private int count;
  private int headings;
  private boolean tooMany;
  private String date = "";
  private String timeOfDay = "";
  private String probe = "";
  private OptionalDouble potential = OptionalDouble.empty();
  private OptionalDouble temperature = OptionalDouble.empty();
  private Skip skip = Skip.TIME;
  private String reason = NONE;

  /** Rows of a file; seconds from zero are counted from 1970. */
  RecordingRows(RecordingLayout layout, @Nullable NearClock near) {
    this.layout = layout;
    this.time = TimeText.of(layout.time(), layout.text().decimalMark(), Instant.EPOCH);
    this.decimal = new DecimalField(layout.text().decimalMark().character());
    this.missing = layout.missing().toArray(String[]::new);
    this.order = new RowClock(layout, near);
    this.values = new RowValues(layout);
    this.header = layout.header() ? new ArrayList<>() : null;
    this.columns =
        layout.header()
            ? BoundColumns.headed(RecordingLayout.NATIVE.columns(), RecordingLayout.NATIVE_HEADER)
            : BoundColumns.numbered(layout.columns());
  }

  /** Reads the rows after the header by these columns. */
  void bind(BoundColumns found) {
    columns = found;
  }

  /** The next text is a line of its own, this one of the file. */
  void startAt(long number) {
    firstLine = number - 1;
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
    return count;
  }

  @Override
  protected void beginRecord(long startingLineNumber) {
    line = firstLine + startingLineNumber;
    count = 0;
    headings = 0;
    tooMany = false;
    date = "";
    timeOfDay = "";
    potential = OptionalDouble.empty();
    temperature = OptionalDouble.empty();
    reason = NONE;
    type = RecordType.DATA;
  }

  @Override
  protected void setComment(char[] text, int offset, int length) {
    type = RecordType.COMMENT;
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
    int column = count++;
    if (header != null) {
      header.add(new String(text, from, to - from));
      return;
    }
    if (column >= columns.count()) {
      tooMany |= from < to;
      return;
    }
    Role role = columns.role(column);
    if (role == Role.OTHER) {
      return;
    }
    headings += ProbeNames.is(columns.heading(column), text, from, to) ? 1 : 0;
    if (reason.isEmpty()) {
      if (quoted && runsOver(text, from, to)) {
        refuse(Skip.ENDLESS, RUNS_OVER);
      } else {
        take(role, text, from, to);
      }
    }
  }

  @Override
  protected Row buildRecord() {
    if (type == RecordType.COMMENT) {
      return new SkippedLine(line, Skip.COMMENT, "a comment");
    }
    List<String> first = header;
    if (first != null && type == RecordType.DATA) {
      header = null;
      return new HeaderRow(line, first);
    }
    if (headings == columns.used() && layout.header()) {
      return new SkippedLine(line, Skip.HEADER_AGAIN, "the header stands here again");
    }
    if (reason.isEmpty() && !fits()) {
      refuse(Skip.VALUES, "expected %d values, found %d".formatted(expected(), count));
    }
    if (reason.isEmpty() && layout.columns().date().isPresent()) {
      String whole = date + ' ' + timeOfDay;
      readTime(whole.toCharArray(), 0, whole.length());
    }
    return reason.isEmpty() ? reading() : new SkippedLine(line, skip, reason);
  }

  private boolean fits() {
    return layout.isNative()
        ? count == columns.count()
        : count >= columns.needed() && !(layout.header() && tooMany);
  }

  private int expected() {
    return layout.header() ? columns.count() : columns.needed();
  }

  private Row reading() {
    boolean timed = layout.columns().time().isPresent();
    Optional<String> gap = values.gap(potential, temperature);
    if (gap.isPresent()) {
      return new SkippedLine(line, Skip.GAP, gap.get());
    }
    if (timed && !order.fits(probe, time)) {
      return new SkippedLine(line, order.skip(), order.fault());
    }
    Instant at = Instant.ofEpochMilli(timed ? order.millis() : 0);
    Reading reading = values.reading(at, potential, temperature);
    if (reading == null) {
      return new SkippedLine(line, Skip.BEYOND, values.fault());
    }
    if (timed) {
      order.accepted();
    }
    return new ProbeReading(probe, reading);
  }

  private void take(Role role, char[] text, int from, int to) {
    switch (role) {
      case DATE -> date = new String(text, from, to - from);
      case TIME -> {
        if (layout.columns().date().isPresent()) {
          timeOfDay = new String(text, from, to - from);
        } else {
          readTime(text, from, to);
        }
      }
      case PROBE -> {
        if (from == to) {
          refuse(Skip.PROBE, "the probe has no name");
        } else {
          probe = names.of(text, from, to);
        }
      }
      case POTENTIAL -> potential = number(values.potentialName(), text, from, to);
      case TEMPERATURE -> temperature = number(values.temperatureName(), text, from, to);
      case OTHER -> {}
    }
  }

  private void readTime(char[] text, int from, int to) {
    if (!time.read(text, from, to)) {
      refuse(time.skip(), "the time \"%s\" %s".formatted(excerpt(text, from, to), time.fault()));
    }
  }

  private OptionalDouble number(String what, char[] text, int from, int to) {
    if (from == to || isMissing(text, from, to)) {
      return OptionalDouble.empty();
    }
    if (!decimal.read(text, from, to)) {
      refuse(Skip.NUMBER, "%s \"%s\" is not a number".formatted(what, excerpt(text, from, to)));
      return OptionalDouble.empty();
    }
    return OptionalDouble.of(decimal.value());
  }

  private boolean isMissing(char[] text, int from, int to) {
    for (String word : missing) {
      if (ProbeNames.is(word, text, from, to)) {
        return true;
      }
    }
    return false;
  }

  private void refuse(Skip why, String words) {
    skip = why;
    reason = words;
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
