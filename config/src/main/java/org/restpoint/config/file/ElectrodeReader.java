package org.restpoint.config.file;

import java.util.List;
import java.util.Optional;
import org.restpoint.config.station.Calibrate;
import org.restpoint.config.station.Electrode;
import org.restpoint.config.station.LinkSettings;
import org.restpoint.config.station.Routine;
import org.restpoint.config.station.Settle;
import org.restpoint.config.station.TemperatureSource;

/** Reads what makes a probe an ion-selective electrode. */
final class ElectrodeReader {

  private static final String USUAL_UNIT = "mg/L";

  private final String probe;
  private final Vocabulary vocabulary;
  private final Standards standards;

  ElectrodeReader(String probe, Vocabulary vocabulary, Standards standards) {
    this.probe = probe;
    this.vocabulary = vocabulary;
    this.standards = standards;
  }

  /** The electrode, or empty where something it cannot be without was refused. */
  Optional<Electrode> read(Section keys, Optional<LinkSettings> link) {
    Optional<String> analyte =
        keys.find("analyte").flatMap(value -> value.word(vocabulary.analytes()));
    Optional<String> basis = basis(keys, analyte);
    String unit = keys.find("unit").flatMap(Concentrations::unit).orElse(USUAL_UNIT);
    Optional<TemperatureSource> temperature =
        keys.need("temperature", TemperatureReader.A_SOURCE)
            .flatMap(value -> TemperatureReader.read(value, link));
    Settle settle = keys.find("settle").map(SettleReader::read).orElse(SettleReader.USUAL);
    Optional<Calibrate> calibrate =
        keys.need("calibrate", CalibrateReader.A_CALIBRATION)
            .flatMap(value -> new CalibrateReader(standards).read(value));
    Routine routine =
        keys.find("routine").map(RoutineReader::read).orElseGet(Routine.Instructed::new);
    RoutineReader.checkRoom(keys, settle, routine);
    if (analyte.isPresent() && keys.has("calibrate")) {
      List<Standards.Draft> used =
          CalibrateReader.named(keys).stream().flatMap(n -> standards.find(n).stream()).toList();
      new BasisAgreement(probe, analyte.get(), vocabulary).check(keys, basis, used);
    }
    if (analyte.isEmpty() || temperature.isEmpty() || calibrate.isEmpty()) {
      return Optional.empty();
    }
    Optional<String> chosen =
        vocabulary.basesOf(analyte.get()).size() > 1 ? basis : Optional.empty();
    return Optional.of(
        new Electrode(
            analyte.get(), chosen, unit, temperature.get(), settle, calibrate.get(), routine));
  }

  private Optional<String> basis(Section keys, Optional<String> analyte) {
    if (analyte.isEmpty()) {
      return keys.find("basis").flatMap(value -> value.word(vocabulary.bases()));
    }
    List<String> bases = vocabulary.basesOf(analyte.get());
    if (bases.size() > 1) {
      String choice = Wording.row(bases, "or") + ", as " + analyte.get() + " is given either way";
      return keys.need("basis", choice).flatMap(value -> value.word(bases));
    }
    if (bases.isEmpty()) {
      keys.find("basis")
          .ifPresent(value -> value.refuse("no basis, as " + analyte.get() + " has none"));
      return Optional.empty();
    }
    return keys.find("basis")
        .flatMap(value -> value.word(bases, ", as " + analyte.get() + " is given in no other way"));
  }
}
