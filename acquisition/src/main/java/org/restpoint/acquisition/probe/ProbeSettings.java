package org.restpoint.acquisition.probe;

import java.util.Map;
import org.restpoint.config.station.Calibrate;
import org.restpoint.config.station.Routine;
import org.restpoint.stability.calibration.SlopeLimits;
import org.restpoint.stability.chemistry.Analyte;
import org.restpoint.stability.chemistry.Basis;
import org.restpoint.stability.chemistry.ConcentrationUnit;
import org.restpoint.stability.rest.RestRule;
import org.restpoint.stability.rest.SettleLimits;

/**
 * What an electrode is and how it is read.
 *
 * @param station the station's name
 * @param probe the probe's name
 * @param analyte the ion
 * @param basis the basis of its results
 * @param unit the unit of its results
 * @param rule when its potential is at rest
 * @param limits when that may be decided
 * @param standards its standards by name, in the order they are read
 * @param slopeLimits the slopes that are accepted
 * @param calibrate how it is calibrated
 * @param routine who says when it is read
 */
public record ProbeSettings(
    String station,
    String probe,
    Analyte analyte,
    Basis basis,
    ConcentrationUnit unit,
    RestRule rule,
    SettleLimits limits,
    Map<String, Standard> standards,
    SlopeLimits slopeLimits,
    Calibrate calibrate,
    Routine routine) {}
