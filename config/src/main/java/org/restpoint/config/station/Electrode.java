package org.restpoint.config.station;

import java.util.Optional;

/**
 * What makes a probe an ion-selective electrode.
 *
 * @param analyte the ion's name from the vocabulary
 * @param basis {@code as-N} or {@code as-ion}; empty where the analyte leaves no choice
 * @param unit the unit its results are given in, a UCUM code: {@code mg/L}, {@code mmol/L}, …
 * @param temperature where the solution's temperature comes from
 * @param settle when its potential is at rest
 * @param calibrate how it is calibrated
 * @param routine who says when it is read
 */
public record Electrode(
    String analyte,
    Optional<String> basis,
    String unit,
    TemperatureSource temperature,
    Settle settle,
    Calibrate calibrate,
    Routine routine) {}
