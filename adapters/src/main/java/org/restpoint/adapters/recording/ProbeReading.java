package org.restpoint.adapters.recording;

import org.restpoint.stability.reading.Reading;

/**
 * A row of a recording that is a reading.
 *
 * @param probe whose reading it is; empty where the recording does not say
 * @param reading the reading
 */
public record ProbeReading(String probe, Reading reading) implements Row {}
