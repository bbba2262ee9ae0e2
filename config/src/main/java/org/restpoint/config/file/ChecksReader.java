package org.restpoint.config.file;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.restpoint.config.file.Measure.Measured;
import org.restpoint.config.station.Calibrate.Every;
import org.restpoint.config.station.Checks;
import org.restpoint.config.station.Checks.Recovery;
import org.restpoint.config.station.Quantity;
import org.restpoint.config.station.ReportableRange;

/** Reads how an electrode's results are checked. */
final class ChecksReader {

  /** The keys of the section: the roles. */
  static final List<String> KEYS = List.of("check-standard", "blank", "duplicate", "spike");

  static final List<String> STANDARD_KEYS = List.of("standard", "every", "recovery", "within");
  static final List<String> BLANK_KEYS = List.of("every", "below");
  static final List<String> DUPLICATE_KEYS = List.of("every", "within");
  static final List<String> SPIKE_KEYS =
      List.of("every", "adds", "of", "into", "uncertainty", "recovery");

  private static final String CHECKS = "a mapping, e.g. { blank: { every: 20 samples } }";
  private static final String A_STANDARD = "a mapping, e.g. { standard: mid, every: 10 samples }";
  private static final String A_BLANK = "a mapping, e.g. { every: 20 samples, below: 0.5 mg/L }";
  private static final String A_DUPLICATE = "a mapping, e.g. { every: 10 samples, within: 10 % }";
  private static final String A_SPIKE =
      "a mapping with adds, of and into, e.g. { adds: 0.5 mL, of: 1000 mg/L, into: 50 mL }";
  private static final String A_RECOVERY = "a range in % around 100 %, e.g. 90..110 %";

  /** Ten times of what is there is no recovery any more. */
  private static final double HIGHEST_RECOVERY = 1000;

  /** Bulb pipette and a bought stock solution together (our choice). */
  private static final double USUAL_UNCERTAINTY = 0.01;

  private static final Allowed PERCENT = Allowed.above(Measure.SHARE, "0 %", "200 %");
  private static final Allowed PH = Allowed.above(Measure.PH_UNCERTAINTY, "0 pH", "2 pH");
  private static final Allowed VOLUME = Allowed.above(Measure.VOLUME, "0 mL", "100 L");
  private static final Allowed ADDED = Allowed.from(Measure.SHARE, "0 %", "20 %");

  private final CalibrateReader calibrate;
  private final Measurand measurand;

  /**
   * A reader for one electrode.
   *
   * @param calibrate what knows the standards
   * @param measurand what the electrode measures
   */
  ChecksReader(CalibrateReader calibrate, Measurand measurand) {
    this.calibrate = calibrate;
    this.measurand = measurand;
  }

  /**
   * Reads the section.
   *
   * @param range between which values results are told as numbers
   */
  Checks read(Entry entry, Optional<ReportableRange> range) {
    Optional<Section> section = entry.section(CHECKS);
    if (section.isEmpty()) {
      return Checks.none();
    }
    Section keys = section.get();
    keys.only(KEYS);
    if (measurand.isInPh()) {
      keys.find("blank").ifPresent(value -> value.refuse("no blank" + measurand.because()));
      keys.find("spike").ifPresent(value -> value.refuse("no spike" + measurand.because()));
    }
    return new Checks(
        keys.find("check-standard").flatMap(e -> e.section(A_STANDARD)).map(this::standard),
        concentrations(keys, "blank").flatMap(e -> e.section(A_BLANK)).map(k -> blank(k, range)),
        keys.find("duplicate").flatMap(e -> e.section(A_DUPLICATE)).map(this::duplicate),
        concentrations(keys, "spike").flatMap(e -> e.section(A_SPIKE)).flatMap(this::spike));
  }

  /** The standard that checks are made with, without telling anything. */
  static Optional<String> named(Section probe) {
    return probe
        .find("checks")
        .flatMap(entry -> entry.inside("check-standard", "standard"))
        .flatMap(Entry::quietText);
  }

  private Optional<Entry> concentrations(Section keys, String role) {
    return measurand.isInPh() ? Optional.empty() : keys.find(role);
  }

  private Checks.CheckStandard standard(Section keys) {
    keys.only(STANDARD_KEYS);
    if (measurand.isInPh()) {
      keys.find("recovery")
          .ifPresent(value -> value.refuse("no recovery" + measurand.because() + ": take within"));
    } else if (measurand.isConcentration()) {
      keys.find("within")
          .ifPresent(value -> value.refuse("no within" + measurand.because() + ": take recovery"));
    }
    Every every = RhythmReader.read(keys);
    if (keys.has("every")) {
      keys.need("standard", "the standard that is read, as every says how often");
    }
    return new Checks.CheckStandard(
        keys.find("standard").flatMap(calibrate::standard),
        every,
        measurand.isInPh() ? Optional.empty() : recovery(keys),
        measurand.isConcentration() ? OptionalDouble.empty() : within(keys, PH));
  }

  private Checks.Blank blank(Section keys, Optional<ReportableRange> range) {
    keys.only(BLANK_KEYS);
    Optional<Measured> below = keys.find("below").flatMap(Concentrations::read);
    Every every = RhythmReader.read(keys);
    if (below.isPresent() && range.isPresent()) {
      tellOutOfReach(keys.find("below").orElseThrow(), below.get(), range.get().low());
    }
    return new Checks.Blank(every, below.map(Concentrations::quantity));
  }

  /** Below the reportable range a result says no more than that. */
  private static void tellOutOfReach(Entry at, Measured below, Quantity low) {
    if (low.unit().equals(Quantity.PH)
        || Concentrations.isAmount(low.unit()) != Concentrations.isAmount(below.unit())) {
      return;
    }
    String number = BigDecimal.valueOf(low.value()).stripTrailingZeros().toPlainString();
    String lowest = number + " " + low.unit();
    if (below.base().compareTo(Measure.CONCENTRATION.base(lowest)) < 0) {
      at.refuse(
          "a concentration from " + lowest + ", where the reportable range begins",
          at.found(),
          "a blank below the range is told as less than its lower end, which does not say whether"
              + " it is below this");
    }
  }

  private Checks.Duplicate duplicate(Section keys) {
    keys.only(DUPLICATE_KEYS);
    boolean ph = keys.find("within").map(measurand::readsAsPh).orElseGet(measurand::isInPh);
    return new Checks.Duplicate(
        RhythmReader.read(keys),
        ph ? OptionalDouble.empty() : within(keys, PERCENT),
        ph ? within(keys, PH) : OptionalDouble.empty());
  }

  private static OptionalDouble within(Section keys, Allowed allowed) {
    Optional<Double> within = keys.find("within").flatMap(allowed::number);
    return within.isPresent() ? OptionalDouble.of(within.get()) : OptionalDouble.empty();
  }

  private Optional<Checks.Spike> spike(Section keys) {
    keys.only(SPIKE_KEYS);
    Optional<Double> adds = keys.need("adds", Measure.VOLUME.expected()).flatMap(VOLUME::number);
    Optional<Quantity> of =
        keys.need("of", Measure.CONCENTRATION.expected())
            .flatMap(Concentrations::read)
            .map(Concentrations::quantity);
    Optional<Double> into = keys.need("into", Measure.VOLUME.expected()).flatMap(VOLUME::number);
    double uncertainty =
        keys.find("uncertainty")
            .flatMap(ADDED::number)
            .map(percent -> percent / 100)
            .orElse(USUAL_UNCERTAINTY);
    Every every = RhythmReader.read(keys);
    Optional<Recovery> recovery = recovery(keys);
    if (adds.isEmpty() || of.isEmpty() || into.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new Checks.Spike(every, adds.get(), of.get(), into.get(), uncertainty, recovery));
  }

  private static Optional<Recovery> recovery(Section keys) {
    Optional<Entry> entry = keys.find("recovery");
    Optional<RangeText> text = entry.flatMap(value -> RangeText.read(value, A_RECOVERY));
    if (text.isEmpty()) {
      return Optional.empty();
    }
    RangeText range = text.get();
    if (range.unit().equals("%")
        && range.low() < 100
        && range.high() > 100
        && range.high() <= HIGHEST_RECOVERY) {
      return Optional.of(new Recovery(range.low(), range.high()));
    }
    entry.get().refuse(A_RECOVERY + ", with 100 % between its limits");
    return Optional.empty();
  }
}
