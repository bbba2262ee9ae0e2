package org.restpoint.adapters.recording;

/**
 * A row of a recording that is not a reading.
 *
 * @param line the line it starts on, counted from 1
 * @param reason what is wrong with it, for a person
 */
public record RowProblem(long line, String reason) implements Row {}
