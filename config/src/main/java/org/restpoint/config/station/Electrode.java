package org.restpoint.config.station;

import java.util.List;
import java.util.Optional;

/**
 * What makes a probe an ion-selective electrode.
 *
 * @param analyte the ion's name from the vocabulary
 * @param basis {@code as-N} or {@code as-ion}; empty where the analyte leaves no choice
 * @param unit the unit its results are given in, a UCUM code: {@code mg/L}, {@code mmol/L}, …;
 *     {@code [pH]} for an analyte that is measured in pH
 * @param temperature where the solution's temperature comes from
 * @param compensation how a potential read at another temperature is corrected
 * @param activity the salt in samples and standards; empty where it is the same in both or the
 *     difference is left out of account
 * @param interferents other ions that it answers to as well, each once, in the file's order
 * @param settle when its potential is at rest
 * @param calibrate how it is calibrated
 * @param checks how its results are checked
 * @param routine who says when it is read
 * @param care how it is looked after, where somebody tells what is done with it
 * @param moves how it is known that it was put into the next cup of a batch
 */
public record Electrode(
    String analyte,
    Optional<String> basis,
    String unit,
    TemperatureSource temperature,
    Compensation compensation,
    Optional<Activity> activity,
    List<Interferent> interferents,
    Settle settle,
    Calibrate calibrate,
    Checks checks,
    Routine routine,
    Optional<Care> care,
    Moves moves) {

  /** Copies the interferents. */
  public Electrode {
    interferents = List.copyOf(interferents);
  }

  /** An electrode of which somebody says that it was put into the next cup. */
  public Electrode(
      String analyte,
      Optional<String> basis,
      String unit,
      TemperatureSource temperature,
      Compensation compensation,
      Optional<Activity> activity,
      List<Interferent> interferents,
      Settle settle,
      Calibrate calibrate,
      Checks checks,
      Routine routine,
      Optional<Care> care) {
    this(
        analyte,
        basis,
        unit,
        temperature,
        compensation,
        activity,
        interferents,
        settle,
        calibrate,
        checks,
        routine,
        care,
        new Moves.Told());
  }
}
