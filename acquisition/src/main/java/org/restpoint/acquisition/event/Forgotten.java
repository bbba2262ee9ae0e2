package org.restpoint.acquisition.event;

import java.time.Instant;

/**
 * What was taken out for good of what was kept of a sample. It stands in the answer alone; no field
 * names the sample.
 *
 * @param station the station's name
 * @param probe the probe on whose topic it was asked for
 * @param time when
 * @param results results of the sample, each with all its revisions
 * @param readings raw readings
 * @param instructions instructions of which no more than their id is left
 * @param clean whether no byte of it is left in the journal's files
 * @param text what was done, in plain words
 * @param remedy what is out of our hands, and what to do about it
 */
public record Forgotten(
    String station,
    String probe,
    Instant time,
    long results,
    long readings,
    long instructions,
    boolean clean,
    String text,
    String remedy)
    implements Event {}
