package org.restpoint.acquisition.probe;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.restpoint.acquisition.preparation.Recipes;
import org.restpoint.config.station.Calibrate;
import org.restpoint.config.station.Care;
import org.restpoint.config.station.Routine;
import org.restpoint.stability.calibration.Calibrator;
import org.restpoint.stability.chemistry.Analyte;
import org.restpoint.stability.rest.RestRule;
import org.restpoint.stability.rest.SettleLimits;

/**
 * What an electrode is and how it is read.
 *
 * @param station the station's name
 * @param probe the probe's name
 * @param analyte the ion
 * @param amounts what its results are counted in, and between which values
 * @param rule when its potential is at rest
 * @param learn whether a forecast learns from finished readings how the electrode responds
 * @param limits when that may be decided
 * @param standards its standards by name, in the order they are read
 * @param calibrator how its response curve is drawn and judged
 * @param matrix what else is in its samples and standards
 * @param calibrate how it is calibrated
 * @param checking how its results are checked
 * @param routine who says when it is read
 * @param care how it is looked after, where somebody tells what is done with it
 * @param recipes how its samples may be prepared
 */
public record ProbeSettings(
    String station,
    String probe,
    Analyte analyte,
    Amounts amounts,
    RestRule rule,
    boolean learn,
    SettleLimits limits,
    Map<String, Standard> standards,
    Calibrator calibrator,
    Matrix matrix,
    Calibrate calibrate,
    Routine routine,
    Optional<Care> care,
    Recipes recipes,
    Checking checking) {

  /** What a check may be made with: the probe's standards, and the one of checks alone. */
  public Map<String, Standard> checkStandards() {
    Map<String, Standard> all = new LinkedHashMap<>(standards);
    checking.standard().ifPresent(one -> all.putIfAbsent(one.name(), one));
    return all;
  }

  /** What its results are counted in. */
  public Scale scale() {
    return amounts.scale();
  }
}
