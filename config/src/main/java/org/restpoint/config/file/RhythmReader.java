package org.restpoint.config.file;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.restpoint.config.station.Calibrate.Every;

/** Reads how often something is due: {@code sample}, {@code 10 samples} or {@code 8 h}. */
final class RhythmReader {

  static final String A_RHYTHM = "sample, a number of samples or a time, e.g. 10 samples or 8 h";

  private static final Pattern SAMPLES = Pattern.compile("(\\d{1,9}) *samples?");
  private static final int MOST_SAMPLES = 10_000;

  private RhythmReader() {}

  /** The rhythm of a section; never where it names none or one that was refused. */
  static Every read(Section keys) {
    return keys.find("every").flatMap(RhythmReader::read).orElseGet(Every.Never::new);
  }

  private static Optional<Every> read(Entry entry) {
    String text = entry.quietText().orElse("").strip();
    if (text.equals("sample")) {
      return Optional.of(new Every.Samples(1));
    }
    Matcher samples = SAMPLES.matcher(text);
    if (samples.matches()) {
      int number = Integer.parseInt(samples.group(1));
      if (number >= 1 && number <= MOST_SAMPLES) {
        return Optional.of(new Every.Samples(number));
      }
      entry.refuse("1 to " + MOST_SAMPLES + " samples");
      return Optional.empty();
    }
    if (entry.isPlainNumberOrFlag()) {
      entry.refuse(A_RHYTHM, entry.found() + " (no unit)");
      return Optional.empty();
    }
    if (!Measure.TIME.isUnitOf(entry)) {
      entry.refuse(A_RHYTHM);
      return Optional.empty();
    }
    return Allowed.WAIT.span(entry).map(Every.Span::new);
  }
}
