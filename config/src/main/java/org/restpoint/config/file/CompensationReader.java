package org.restpoint.config.file;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.restpoint.config.file.Measure.Measured;
import org.restpoint.config.station.Compensation;

/** Reads how a potential read at another temperature than the standards is corrected. */
final class CompensationReader {

  /** The keys of which a compensation that is a mapping has exactly one. */
  static final List<String> KINDS = List.of("isopotential", "coefficient");

  /** The keys of an isopotential compensation. */
  static final List<String> ISOPOTENTIAL_KEYS = List.of("isopotential", "uncertainty");

  /** The keys of a measured coefficient. */
  static final List<String> COEFFICIENT_KEYS = List.of("coefficient", "at", "uncertainty");

  private static final String OR_MAPPING = ", or a mapping with isopotential or coefficient";
  private static final double USUAL_UNCERTAINTY = 0.5;
  private static final double USUAL_PH_UNCERTAINTY = 0.5;
  private static final double USUAL_MILLIVOLTS_PER_KELVIN = 0.1;
  private static final Allowed PH_UNCERTAINTY =
      Allowed.from(Measure.PH_UNCERTAINTY, "0 pH", "7 pH");

  /**
   * An ideal slope changes by 0.2 mV/K for each decade; no electrode shows a hundred times that.
   */
  private static final Allowed COEFFICIENT =
      Allowed.from(Measure.TEMPERATURE_COEFFICIENT, "-20 mV/K", "20 mV/K");

  private static final Allowed COEFFICIENT_UNCERTAINTY =
      Allowed.from(Measure.TEMPERATURE_COEFFICIENT, "0 mV/K", "20 mV/K");

  private final Measurand measurand;

  CompensationReader(Measurand measurand) {
    this.measurand = measurand;
  }

  Compensation read(Entry entry) {
    if (entry.isMapping()) {
      return entry.section("ideal" + OR_MAPPING).flatMap(this::read).orElseGet(this::usual);
    }
    if (entry.quietText().isEmpty()) {
      entry.refuse("ideal" + OR_MAPPING);
    } else {
      entry.word(List.of("ideal"), OR_MAPPING);
    }
    return usual();
  }

  private Compensation usual() {
    return new Compensation.Ideal();
  }

  private Optional<Compensation> read(Section keys) {
    if (keys.has("isopotential") == keys.has("coefficient")) {
      keys.only(Stream.concat(Stream.of("isopotential"), COEFFICIENT_KEYS.stream()).toList());
    } else {
      keys.only(keys.has("coefficient") ? COEFFICIENT_KEYS : ISOPOTENTIAL_KEYS);
    }
    Optional<String> kind = keys.kind(KINDS);
    return switch (kind.orElse("")) {
      case "isopotential" -> keys.find("isopotential").flatMap(at -> isopotential(keys, at));
      case "coefficient" -> coefficient(keys);
      default -> Optional.empty();
    };
  }

  private Optional<Compensation> isopotential(Section keys, Entry at) {
    Optional<Entry> uncertainty = keys.find("uncertainty");
    if (measurand.readsAsPh(at)) {
      Optional<Double> ph = Allowed.PH.number(at);
      double in = uncertainty.flatMap(PH_UNCERTAINTY::number).orElse(USUAL_PH_UNCERTAINTY);
      return ph.map(value -> new Compensation.IsopotentialPh(value, in));
    }
    Optional<Measured> concentration = Concentrations.read(at);
    double share =
        uncertainty
            .flatMap(value -> Concentrations.uncertainty(value, concentration))
            .orElse(USUAL_UNCERTAINTY);
    return concentration.map(
        read -> new Compensation.Isopotential(Concentrations.quantity(read), share));
  }

  private Optional<Compensation> coefficient(Section keys) {
    Optional<Double> perKelvin = keys.find("coefficient").flatMap(COEFFICIENT::number);
    double uncertainty =
        keys.find("uncertainty")
            .flatMap(COEFFICIENT_UNCERTAINTY::number)
            .orElse(USUAL_MILLIVOLTS_PER_KELVIN);
    return keys.need("at", "what it was measured in: " + measurand.aPoint())
        .flatMap(measurand::point)
        .flatMap(
            at ->
                perKelvin.map(
                    change -> new Compensation.MeasuredCoefficient(change, at, uncertainty)));
  }
}
