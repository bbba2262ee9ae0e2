package org.restpoint.config.station;

import java.util.Optional;

/**
 * What numbers a device sends.
 *
 * @param potential of the potential; empty for a thermometer
 * @param temperature of the temperature, where there is one
 */
public record Numbers(
    Optional<PotentialNumber> potential, Optional<TemperatureNumber> temperature) {}
