package org.restpoint.config.file;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.restpoint.config.station.Activity;
import org.restpoint.config.station.Calibrate;
import org.restpoint.config.station.Care;
import org.restpoint.config.station.Checks;
import org.restpoint.config.station.Compensation;
import org.restpoint.config.station.Electrode;
import org.restpoint.config.station.Interferent;
import org.restpoint.config.station.LinkSettings;
import org.restpoint.config.station.Moves;
import org.restpoint.config.station.Routine;
import org.restpoint.config.station.Settle;
import org.restpoint.config.station.TemperatureSource;

/** Reads what makes a probe an ion-selective electrode. */
final class ElectrodeReader {

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
    Measurand measurand = new Measurand(analyte, vocabulary);
    Optional<String> basis = basis(keys, measurand);
    String unit = keys.find("unit").flatMap(measurand::unit).orElseGet(measurand::usualUnit);
    Optional<TemperatureSource> temperature =
        keys.need("temperature", TemperatureReader.A_SOURCE)
            .flatMap(value -> TemperatureReader.read(value, link));
    Compensation compensation =
        keys.find("compensation")
            .map(value -> new CompensationReader(measurand).read(value))
            .orElseGet(Compensation.Ideal::new);
    Optional<Activity> activity =
        keys.find("activity").flatMap(value -> ActivityReader.read(value, measurand));
    List<Interferent> interferents =
        keys.find("interferents")
            .map(value -> new InterferentsReader(measurand).read(value))
            .orElseGet(List::of);
    Settle settle = keys.find("settle").map(SettleReader::read).orElse(SettleReader.USUAL);
    CalibrateReader calibration = new CalibrateReader(standards, measurand);
    Optional<Calibrate> calibrate =
        keys.need("calibrate", CalibrateReader.A_CALIBRATION).flatMap(calibration::read);
    Checks checks =
        keys.find("checks")
            .map(
                value ->
                    new ChecksReader(calibration, measurand)
                        .read(value, calibrate.flatMap(Calibrate::range)))
            .orElseGet(Checks::none);
    Routine routine =
        keys.find("routine").map(RoutineReader::read).orElseGet(Routine.Instructed::new);
    RoutineReader.checkRoom(keys, settle, routine);
    Optional<Care> care = keys.find("care").flatMap(value -> CareReader.read(value, routine));
    Moves moves = keys.find("moves").map(MovesReader::read).orElseGet(Moves.Told::new);
    checkBases(keys, measurand, basis);
    SimulatedVisitsReader.check(keys, measurand);
    if (analyte.isEmpty() || temperature.isEmpty() || calibrate.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new Electrode(
            analyte.get(),
            new BasisReader(vocabulary).chosen(basis, analyte.get()),
            unit,
            temperature.get(),
            compensation,
            activity,
            interferents,
            settle,
            calibrate.get(),
            checks,
            routine,
            care,
            moves));
  }

  private Optional<String> basis(Section keys, Measurand measurand) {
    if (measurand.isInPh()) {
      keys.find("basis").ifPresent(value -> value.refuse("no basis" + measurand.because()));
      return Optional.empty();
    }
    return new BasisReader(vocabulary).read(keys, measurand.analyte(), true);
  }

  private void checkBases(Section keys, Measurand measurand, Optional<String> basis) {
    if (!measurand.isConcentration() || !keys.has("calibrate")) {
      return;
    }
    List<Standards.Draft> used =
        Stream.concat(CalibrateReader.named(keys).stream(), ChecksReader.named(keys).stream())
            .distinct()
            .flatMap(name -> standards.find(name).stream())
            .filter(draft -> !draft.isInPh())
            .toList();
    new BasisAgreement(probe, measurand.analyte().orElseThrow(), vocabulary)
        .check(keys, basis, used);
  }
}
