package org.restpoint.acquisition.command;

import java.util.ArrayList;
import java.util.List;
import org.restpoint.acquisition.probe.Words;
import org.restpoint.config.station.Activity;
import org.restpoint.config.station.Activity.OfStandards;
import org.restpoint.config.station.Calibrate;
import org.restpoint.config.station.Compensation;
import org.restpoint.config.station.Electrode;
import org.restpoint.config.station.Interferent;
import org.restpoint.config.station.Interferent.Level;
import org.restpoint.config.station.LowEnd;
import org.restpoint.config.station.Quantity;

/** Says back what a station file says of an electrode's chemistry, where it says something. */
final class ChemistryAccount {

  private ChemistryAccount() {}

  static List<String> of(Electrode electrode) {
    List<String> lines = new ArrayList<>();
    Calibrate calibrate = electrode.calibrate();
    lines.add(
        "%s; flagged where sample and standards differ by more than %s K"
            .formatted(
                compensation(electrode.compensation()),
                Words.number(calibrate.temperatureWithinKelvin())));
    if (!(calibrate.lowEnd() instanceof LowEnd.Straight)) {
      lines.add(lowEnd(calibrate.lowEnd()));
    }
    calibrate
        .range()
        .ifPresent(
            range ->
                lines.add(
                    "numbers told from %s to %s"
                        .formatted(quantity(range.low()), quantity(range.high()))));
    if (calibrate.stockRelativeUncertainty() > 0) {
      lines.add(
          "all standards from one stock, known to %s %%"
              .formatted(Words.number(100 * calibrate.stockRelativeUncertainty())));
    }
    electrode.activity().ifPresent(activity -> lines.add(activity(activity)));
    electrode.interferents().forEach(ion -> lines.add(interferent(ion)));
    return lines;
  }

  private static String compensation(Compensation compensation) {
    if (compensation instanceof Compensation.Isopotential point) {
      return "temperature turns the line about %s (standard uncertainty %s %%)"
          .formatted(
              quantity(point.concentration()), Words.number(100 * point.relativeUncertainty()));
    }
    if (compensation instanceof Compensation.IsopotentialPh point) {
      return "temperature turns the line about pH %s (standard uncertainty %s)"
          .formatted(Words.number(point.ph()), Words.number(point.phUncertainty()));
    }
    if (compensation instanceof Compensation.MeasuredCoefficient measured) {
      return "temperature moves %s by %s mV/K (standard uncertainty %s)"
          .formatted(
              quantity(measured.at()),
              Words.number(measured.millivoltsPerKelvin()),
              Words.number(measured.uncertaintyMillivoltsPerKelvin()));
    }
    return "temperature compensated by the ideal slope";
  }

  private static String lowEnd(LowEnd lowEnd) {
    if (lowEnd instanceof LowEnd.Fixed fixed) {
      return "the low end bends as if %s were always there (standard uncertainty %s %%)"
          .formatted(quantity(fixed.level()), Words.number(100 * fixed.relativeUncertainty()));
    }
    return "the low end bends as the standards say";
  }

  private static String activity(Activity activity) {
    String standards =
        activity.standards() instanceof OfStandards.Given given
            ? "standards of " + quantity(given.ionicStrength())
            : "standards of their own salt";
    return "no adjustor: ionic strength %s in samples (standard uncertainty %s %%), %s, by %s"
        .formatted(
            quantity(activity.sample()),
            Words.number(100 * activity.relativeUncertainty()),
            standards,
            activity.model() == Activity.Model.DAVIES ? "Davies" : "Debye and Hückel");
  }

  private static String interferent(Interferent ion) {
    String level =
        ion.level() instanceof Level.Known known
            ? "%s (standard uncertainty %s %%), corrected for"
                .formatted(
                    quantity(known.concentration()),
                    Words.number(100 * known.relativeUncertainty()))
            : "at most %s, told".formatted(quantity(((Level.AtMost) ion.level()).concentration()));
    return "%s interferes by %s: %s".formatted(ion.ion(), Words.number(ion.selectivity()), level);
  }

  private static String quantity(Quantity quantity) {
    return Words.number(quantity.value())
        + " "
        + (quantity.unit().equals(Quantity.PH) ? "pH" : quantity.unit());
  }
}
