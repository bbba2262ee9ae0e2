package org.restpoint.acquisition.probe;

import java.time.LocalDate;
import java.util.Optional;
import org.restpoint.stability.chemistry.Concentration;

/**
 * A standard solution of a probe's analyte.
 *
 * @param name what instructions call it
 * @param concentration as it was given
 * @param molesPerLitre the same in mol/L of the ion, above zero
 * @param relativeUncertainty standard uncertainty as a share of the concentration
 * @param expires the last day it may be used
 */
public record Standard(
    String name,
    Concentration concentration,
    double molesPerLitre,
    double relativeUncertainty,
    Optional<LocalDate> expires) {}
