package org.restpoint.adapters.recording;

/**
 * A line of a recording that gives no reading.
 *
 * @param line the line it starts on, counted from 1
 * @param skip why, in one word of a few
 * @param reason why, for a person
 */
public record SkippedLine(long line, Skip skip, String reason) implements Row {}
