package org.restpoint.adapters.journal;

import org.restpoint.stability.reading.Reading;

/**
 * A raw reading as the journal keeps it, to the last bit.
 *
 * @param probe the probe's name
 * @param reading what it sent
 */
public record StoredReading(String probe, Reading reading) {}
