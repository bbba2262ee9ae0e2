package org.restpoint.adapters.recording;

/**
 * The first row of a file.
 *
 * @param line where it starts
 * @param text its values as they stand, joined by commas
 */
record HeaderRow(long line, String text) implements Row {}
