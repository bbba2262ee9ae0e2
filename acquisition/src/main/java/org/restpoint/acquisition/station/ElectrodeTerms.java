package org.restpoint.acquisition.station;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.restpoint.acquisition.probe.Amounts;
import org.restpoint.acquisition.probe.Checking;
import org.restpoint.acquisition.probe.Matrix;
import org.restpoint.acquisition.probe.Scale;
import org.restpoint.acquisition.probe.Standard;
import org.restpoint.acquisition.probe.Standard.Content;
import org.restpoint.config.station.Activity;
import org.restpoint.config.station.Activity.OfStandards;
import org.restpoint.config.station.Calibrate;
import org.restpoint.config.station.Checks.CheckStandard;
import org.restpoint.config.station.Compensation.Ideal;
import org.restpoint.config.station.Compensation.Isopotential;
import org.restpoint.config.station.Compensation.IsopotentialPh;
import org.restpoint.config.station.Compensation.MeasuredCoefficient;
import org.restpoint.config.station.Electrode;
import org.restpoint.config.station.Interferent.Level;
import org.restpoint.config.station.Quantity;
import org.restpoint.config.station.ReportableRange;
import org.restpoint.config.station.StandardSolution;
import org.restpoint.config.station.StandardSolution.Value;
import org.restpoint.config.station.Station;
import org.restpoint.stability.activity.ActivityModel;
import org.restpoint.stability.activity.Davies;
import org.restpoint.stability.activity.ExtendedDebyeHueckel;
import org.restpoint.stability.activity.Ion;
import org.restpoint.stability.buffer.PhBuffer;
import org.restpoint.stability.buffer.TemperatureTable;
import org.restpoint.stability.calibration.Calibrator;
import org.restpoint.stability.calibration.Compensation;
import org.restpoint.stability.calibration.LowEnd;
import org.restpoint.stability.calibration.SlopeLimits;
import org.restpoint.stability.chemistry.Analyte;
import org.restpoint.stability.chemistry.Basis;
import org.restpoint.stability.chemistry.Concentration;
import org.restpoint.stability.chemistry.ConcentrationUnit;
import org.restpoint.stability.interference.Interferent;

/**
 * Translates what a station file says of one electrode into the terms of the science.
 *
 * @param station the checked station
 * @param electrode the electrode
 */
record ElectrodeTerms(Station station, Electrode electrode) {

  /** Any ion: between units of amount of substance the ion does not matter. */
  private static final Analyte ANY = Analyte.known().get(0);

  Analyte analyte() {
    return StationTerms.analyte(electrode);
  }

  Scale scale() {
    return StationTerms.isInPh(electrode)
        ? new Scale.OfPh()
        : new Scale.OfConcentration(
            analyte(),
            ConcentrationUnit.ofCode(electrode.unit()).orElseThrow(),
            StationTerms.basis(electrode.basis()));
  }

  Amounts amounts() {
    return new Amounts(scale(), electrode.calibrate().range().map(this::range));
  }

  private Amounts.Range range(ReportableRange range) {
    return new Amounts.Range(value(range.low()), value(range.high()));
  }

  /** A quantity in what results are counted in. */
  private double value(Quantity quantity) {
    return quantity.unit().equals(Quantity.PH)
        ? quantity.value()
        : scale().of(molesPerLitre(quantity));
  }

  private double molesPerLitre(Quantity quantity) {
    return quantity.unit().equals(Quantity.PH)
        ? new Scale.OfPh().molesPerLitre(quantity.value())
        : StationTerms.molesPerLitre(quantity, electrode);
  }

  Map<String, Standard> standards() {
    Map<String, Standard> standards = new LinkedHashMap<>();
    for (String name : electrode.calibrate().standards()) {
      standards.put(name, standard(name));
    }
    return standards;
  }

  private Standard standard(String name) {
    StandardSolution solution = station.standards().get(name);
    if (solution == null) {
      throw new IllegalArgumentException("a checked station names only standards it defines");
    }
    return new Standard(name, content(solution.value()), solution.expires());
  }

  Checking checking() {
    return new Checking(
        new CheckTerms(electrode.checks(), this::value).plan(),
        electrode.checks().checkStandard().flatMap(CheckStandard::standard).map(this::standard));
  }

  private Content content(Value value) {
    if (value instanceof Value.OfConcentration given) {
      Concentration concentration =
          StationTerms.concentration(given.concentration(), StationTerms.basis(given.basis()));
      return new Content.Constant(
          new Scale.OfConcentration(analyte(), concentration.unit(), concentration.basis()),
          concentration.value(),
          given.relativeUncertainty());
    }
    if (value instanceof Value.OfBuffer buffer) {
      PhBuffer known = PhBuffer.named(buffer.buffer()).orElseThrow();
      return new Content.Buffer(known::ph, buffer.phUncertainty());
    }
    if (value instanceof Value.OfPhTable given) {
      TemperatureTable table =
          new TemperatureTable(
              given.phByCelsius().entrySet().stream()
                  .map(row -> new TemperatureTable.Point(row.getKey(), row.getValue()))
                  .toList());
      return new Content.Buffer(table::at, given.phUncertainty());
    }
    Value.OfPh fixed = (Value.OfPh) value;
    return new Content.Constant(new Scale.OfPh(), fixed.ph(), Math.log(10) * fixed.phUncertainty());
  }

  Calibrator calibrator() {
    Calibrate calibrate = electrode.calibrate();
    return new Calibrator(
        analyte().charge(),
        new SlopeLimits(calibrate.slopePercentLow(), calibrate.slopePercentHigh()),
        lowEnd(calibrate.lowEnd()),
        compensation(),
        calibrate.stockRelativeUncertainty());
  }

  private LowEnd lowEnd(org.restpoint.config.station.LowEnd given) {
    if (given instanceof org.restpoint.config.station.LowEnd.Fixed fixed) {
      double level = molesPerLitre(fixed.level());
      return new LowEnd.Fixed(level, level * fixed.relativeUncertainty());
    }
    return given instanceof org.restpoint.config.station.LowEnd.Curved
        ? new LowEnd.Curved()
        : new LowEnd.Straight();
  }

  private Compensation compensation() {
    if (electrode.compensation() instanceof Isopotential point) {
      return Compensation.isopotential(
          Math.log10(molesPerLitre(point.concentration())),
          point.relativeUncertainty() / Math.log(10));
    }
    if (electrode.compensation() instanceof IsopotentialPh point) {
      return Compensation.isopotential(-point.ph(), point.phUncertainty());
    }
    if (electrode.compensation() instanceof MeasuredCoefficient measured) {
      return Compensation.measured(
          Math.log10(molesPerLitre(measured.at())),
          measured.millivoltsPerKelvin(),
          measured.uncertaintyMillivoltsPerKelvin());
    }
    if (!(electrode.compensation() instanceof Ideal)) {
      throw new IllegalStateException("a compensation that is not known here");
    }
    return Compensation.ideal();
  }

  Matrix matrix() {
    List<Interferent> known =
        electrode.interferents().stream()
            .filter(ion -> ion.level() instanceof Level.Known)
            .map(this::interferent)
            .toList();
    List<Interferent> atMost =
        electrode.interferents().stream()
            .filter(ion -> ion.level() instanceof Level.AtMost)
            .map(this::interferent)
            .toList();
    return new Matrix(electrode.activity().map(this::salt), analyte().charge(), known, atMost);
  }

  private Matrix.Salt salt(Activity activity) {
    return new Matrix.Salt(
        Ion.of(analyte()).orElseThrow(),
        model(activity),
        molar(activity.sample()),
        activity.relativeUncertainty(),
        activity.standards() instanceof OfStandards.Given given
            ? OptionalDouble.of(molar(given.ionicStrength()))
            : OptionalDouble.empty());
  }

  private static ActivityModel model(Activity activity) {
    return switch (activity.model()) {
      case DAVIES -> new Davies();
      case DEBYE_HUECKEL -> new ExtendedDebyeHueckel();
    };
  }

  /** An ionic strength, given in mol/L or a part of it, in mol/L. */
  private static double molar(Quantity quantity) {
    return StationTerms.concentration(quantity, Basis.AS_ION).molesPerLitre(ANY);
  }

  /**
   * An interfering ion with its activity: its concentration, less where the station file says how
   * salty samples are. Of its selectivity coefficient no more than the order is known; the
   * uncertainty of the level is taken for both.
   */
  private Interferent interferent(org.restpoint.config.station.Interferent given) {
    Analyte ion = Analyte.named(given.ion()).orElseThrow();
    Quantity level =
        given.level() instanceof Level.Known known
            ? known.concentration()
            : ((Level.AtMost) given.level()).concentration();
    double c =
        StationTerms.concentration(level, StationTerms.basis(given.basis())).molesPerLitre(ion);
    double coefficient =
        electrode
            .activity()
            .flatMap(
                activity ->
                    Ion.of(ion)
                        .map(
                            known ->
                                model(activity)
                                    .coefficient(known, molar(activity.sample()), 25)
                                    .value()))
            .orElse(1.0);
    return new Interferent(
        given.ion(),
        ion.charge(),
        given.selectivity(),
        c * coefficient,
        given.level() instanceof Level.Known known ? known.relativeUncertainty() : 0,
        0);
  }
}
