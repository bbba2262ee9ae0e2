package org.restpoint.config.file;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.restpoint.config.station.Calibrate;
import org.restpoint.config.station.Calibrate.Every;
import org.restpoint.config.station.LowEnd;
import org.restpoint.config.station.ReportableRange;
import org.restpoint.config.station.SettleRule.Within;

/** Reads how an electrode is calibrated. */
final class CalibrateReader {

  /** The keys of a calibration. */
  static final List<String> KEYS =
      List.of(
          "standards",
          "restandardize",
          "every",
          "bracket",
          "slope-every",
          "slope",
          "valid-for",
          "low-end",
          "range",
          "temperature-within",
          "stock-uncertainty",
          "moved-within");

  static final String A_CALIBRATION = "a mapping with standards, e.g. { standards: [low, high] }";

  private static final String A_LIST = "a list of standards, e.g. [low, high]";
  private static final String A_NAME = "the name of a standard";
  private static final String A_SLOPE = "a range in % of the ideal slope, e.g. 90..103 %";
  private static final String A_RHYTHM = "sample, a number of samples or a time like 2 h";

  /** Half of the ideal slope is a dead membrane; half as much again is a wiring fault. */
  private static final double LOWEST_SLOPE = 50;

  private static final double HIGHEST_SLOPE = 150;
  private static final RangeText USUAL_SLOPE = new RangeText(85, 105, "%");

  /** US EPA method 9045 (7.2.4) asks for a correction where sample and buffers differ by more. */
  private static final double USUAL_KELVIN = 2;

  private static final Allowed WITHIN =
      Allowed.from(Measure.TEMPERATURE_DIFFERENCE, "0.1 K", "50 K");
  private static final Allowed STOCK = Allowed.from(Measure.SHARE, "0 %", "20 %");
  private static final Allowed MOVED = Allowed.from(Measure.TOLERANCE, "0.5 mV", "100 mV");
  private static final Allowed MOVED_SHARE = Allowed.from(Measure.SHARE, "2 %", "1000 %");
  private static final long MOST_SAMPLES = 10_000;

  private final Standards standards;
  private final Measurand measurand;

  /**
   * A reader for one electrode.
   *
   * @param standards the standards of the file
   * @param measurand what the electrode measures
   */
  CalibrateReader(Standards standards, Measurand measurand) {
    this.standards = standards;
    this.measurand = measurand;
  }

  /** The calibration, or empty where no standard of it is sound. */
  Optional<Calibrate> read(Entry entry) {
    Optional<Section> section = entry.section(A_CALIBRATION);
    if (section.isEmpty()) {
      return Optional.empty();
    }
    Section keys = section.get();
    keys.only(KEYS);
    List<String> names =
        keys.need("standards", A_LIST).map(value -> standards(value)).orElse(List.of());
    Optional<String> again =
        keys.find("restandardize")
            .flatMap(value -> areDefined(names) ? value.word(names) : value.text(A_NAME));
    Every every = keys.find("every").map(CalibrateReader::every).orElseGet(Every.Never::new);
    if (keys.has("every")) {
      keys.need("restandardize", "the standard that is read again, as every says how often");
    }
    boolean bracket = keys.find("bracket").flatMap(Entry::flag).orElse(false);
    if (bracket) {
      keys.need("restandardize", "the standard whose readings bracket the samples");
    }
    Optional<Duration> slopeEvery =
        keys.find("slope-every").flatMap(value -> slopeEvery(value, names));
    RangeText slope = keys.find("slope").flatMap(CalibrateReader::slope).orElse(USUAL_SLOPE);
    Duration validFor =
        keys.find("valid-for").flatMap(Allowed.WAIT::span).orElse(Duration.ofHours(24));
    LowEnd lowEnd =
        keys.find("low-end")
            .map(value -> LowEndReader.read(value, measurand, names.size()))
            .orElseGet(LowEnd.Straight::new);
    Optional<ReportableRange> range =
        keys.find("range").flatMap(value -> RangeReader.read(value, measurand));
    double kelvin = keys.find("temperature-within").flatMap(WITHIN::number).orElse(USUAL_KELVIN);
    double stock =
        keys.find("stock-uncertainty").flatMap(STOCK::number).map(p -> p / 100).orElse(0.0);
    Within moved =
        keys.find("moved-within").flatMap(CalibrateReader::moved).orElse(Calibrate.USUAL_MOVE);
    return names.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new Calibrate(
                names,
                again,
                every,
                bracket,
                slopeEvery,
                slope.low(),
                slope.high(),
                validFor,
                lowEnd,
                range,
                kelvin,
                stock,
                moved));
  }

  private static Optional<Within> moved(Entry entry) {
    return Measure.SHARE.isUnitOf(entry)
        ? MOVED_SHARE.number(entry).map(Within.Percent::new)
        : MOVED.number(entry).map(Within.Millivolts::new);
  }

  private static Optional<Duration> slopeEvery(Entry entry, List<String> names) {
    if (names.size() == 1) {
      entry.refuse("two standards or more, as one draws no line");
      return Optional.empty();
    }
    return Allowed.WAIT.span(entry);
  }

  /** The standards a probe names, without telling anything. */
  static List<String> named(Section probe) {
    return probe.find("calibrate").flatMap(entry -> entry.inside("standards")).stream()
        .flatMap(list -> list.quietItems().stream())
        .flatMap(item -> item.quietText().stream())
        .distinct()
        .toList();
  }

  private List<String> standards(Entry list) {
    List<String> names = new ArrayList<>();
    for (Entry item : list.items(A_LIST)) {
      Optional<String> name = item.freeText(A_NAME);
      if (name.isEmpty()) {
        continue;
      }
      if (names.contains(name.get())) {
        item.refuse("each standard once", item.found() + " again");
      } else {
        tellUnfit(item, name.get());
      }
      names.add(name.get());
    }
    return names;
  }

  /** The name of one standard, after telling one that is not defined or on another scale. */
  Optional<String> standard(Entry item) {
    Optional<String> name = item.freeText(A_NAME);
    name.ifPresent(written -> tellUnfit(item, written));
    return name;
  }

  private void tellUnfit(Entry item, String name) {
    if (standards.find(name).isEmpty()) {
      tellUndefined(item, name);
    } else {
      standards.find(name).ifPresent(draft -> checkScale(item, draft));
    }
  }

  /** Tells a concentration where a pH is measured, and a pH where a concentration is. */
  private void checkScale(Entry item, Standards.Draft draft) {
    if (draft.kind().isEmpty()) {
      return;
    }
    String found = item.found() + " with " + draft.kind().get();
    if (measurand.isInPh() && !draft.isInPh()) {
      item.refuse("a standard with buffer or pH" + measurand.because(), found);
    } else if (measurand.isConcentration() && draft.isInPh()) {
      item.refuse("a standard with concentration" + measurand.because(), found);
    }
  }

  private boolean areDefined(List<String> names) {
    return !names.isEmpty() && standards.names().containsAll(names);
  }

  private void tellUndefined(Entry item, String name) {
    List<String> defined = standards.names();
    String known = defined.isEmpty() ? "none are defined" : String.join(", ", defined);
    String expected = "a standard defined under standards (" + known + ")";
    Optional<String> meant = Entry.meant(name, defined);
    item.problems().add(new Problem(item.key(), item.line(), expected, item.found(), meant));
  }

  private static Every every(Entry entry) {
    if (entry.isPlainNumberOrFlag()) {
      return entry
          .whole(1, MOST_SAMPLES)
          .<Every>map(samples -> new Every.Samples(samples.intValue()))
          .orElseGet(Every.Never::new);
    }
    Optional<String> text = entry.text(A_RHYTHM);
    if (text.isEmpty()) {
      return new Every.Never();
    }
    if (text.get().equals("sample")) {
      return new Every.Samples(1);
    }
    if (text.get().isEmpty() || Character.isLetter(text.get().charAt(0))) {
      entry.refuse(A_RHYTHM);
      return new Every.Never();
    }
    return Allowed.WAIT.span(entry).<Every>map(Every.Span::new).orElseGet(Every.Never::new);
  }

  private static Optional<RangeText> slope(Entry entry) {
    Optional<RangeText> text = RangeText.read(entry, A_SLOPE);
    if (text.isEmpty()) {
      return Optional.empty();
    }
    RangeText slope = text.get();
    if (!slope.unit().equals("%")) {
      entry.refuse(A_SLOPE);
      return Optional.empty();
    }
    if (LOWEST_SLOPE <= slope.low()
        && slope.low() < slope.high()
        && slope.high() <= HIGHEST_SLOPE) {
      return text;
    }
    entry.refuse("a range in % of the ideal slope within 50..150 %, the lower limit first");
    return Optional.empty();
  }
}
