package org.restpoint.adapters.recording;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.restpoint.adapters.quantity.Meaning;
import org.restpoint.adapters.quantity.PotentialScale;
import org.restpoint.adapters.quantity.TemperatureScale;
import org.restpoint.adapters.recording.TextForm.DecimalMark;
import org.restpoint.adapters.recording.TextForm.Delimiter;

/**
 * How a recording is written. A file whose header is {@code time,probe,millivolts,celsius} is read
 * as {@link #NATIVE}, whatever layout is given. Refuses, with an {@link IllegalArgumentException},
 * columns whose numbers mean nothing and meanings without a column, headings where there is no
 * header, and decimal commas between commas where there is no header: nobody could tell {@code
 * 12,5} from two values.
 *
 * @param text how its text is written
 * @param header whether its first row says what the columns are
 * @param columns what stands where
 * @param meaning what its numbers mean
 * @param time how its times are written
 * @param missing texts that stand for no value, such as {@code NaN} and {@code -9999}; an empty
 *     value is none in any case
 */
public record RecordingLayout(
    TextForm text,
    boolean header,
    RecordingColumns columns,
    Meaning meaning,
    TimeForm time,
    Set<String> missing) {

  /** The header of the native form, which the service itself writes. */
  static final List<String> NATIVE_HEADER = List.of("time", "probe", "millivolts", "celsius");

  /** The native form: CSV in UTF-8 with the header {@code time,probe,millivolts,celsius}. */
  public static final RecordingLayout NATIVE =
      new RecordingLayout(
          TextForm.NATIVE,
          true,
          new RecordingColumns(
              Optional.empty(),
              Optional.of(new Column.Headed("time")),
              Optional.of(new Column.Headed("probe")),
              Optional.of(new Column.Headed("millivolts")),
              Optional.of(new Column.Headed("celsius"))),
          new Meaning(
              Optional.of(PotentialScale.MILLIVOLTS), Optional.of(TemperatureScale.CELSIUS)),
          new TimeForm.Native(),
          Set.of());

  public RecordingLayout {
    missing = Set.copyOf(missing);
    if (columns.potential().isPresent() != meaning.potential().isPresent()
        || columns.temperature().isPresent() != meaning.temperature().isPresent()) {
      throw new IllegalArgumentException("a column of numbers and what they mean go together");
    }
    if (!header) {
      if (columns.byRole().values().stream().anyMatch(Column.Headed.class::isInstance)) {
        throw new IllegalArgumentException("without a header columns are told by their numbers");
      }
      if (text.delimiter() == Delimiter.COMMA && text.decimalMark() == DecimalMark.COMMA) {
        throw new IllegalArgumentException(
            "without a header a comma is either the delimiter or the decimal mark");
      }
    }
  }

  /** Whether it is the native form, with or without its times. */
  boolean isNative() {
    return time instanceof TimeForm.Native;
  }

  /** Whether rows of several probes stand in one file. */
  boolean hasProbes() {
    return columns.probe().isPresent();
  }

  /** Whether it reads the same columns as another and a potential besides. */
  public boolean covers(RecordingLayout other) {
    return columns.potential().isPresent()
        && columns.temperature().isPresent()
        && other.columns().potential().isEmpty()
        && other.equals(
            new RecordingLayout(
                text,
                header,
                new RecordingColumns(
                    columns.date(),
                    columns.time(),
                    columns.probe(),
                    Optional.empty(),
                    columns.temperature()),
                new Meaning(Optional.empty(), meaning.temperature()),
                time,
                missing));
  }

  /** The same with other letters. */
  RecordingLayout in(Encoding encoding) {
    return new RecordingLayout(
        new TextForm(text.delimiter(), text.decimalMark(), encoding, text.comment()),
        header,
        columns,
        meaning,
        time,
        missing);
  }

  /** The same whose times are not read. */
  RecordingLayout withoutTime() {
    return new RecordingLayout(text, header, columns.withoutTime(), meaning, time, missing);
  }
}
