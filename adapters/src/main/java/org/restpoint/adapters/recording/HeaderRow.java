package org.restpoint.adapters.recording;

import java.util.List;

/**
 * The first row of a file.
 *
 * @param line where it starts
 * @param values its values, white space around them taken off
 */
record HeaderRow(long line, List<String> values) implements Row {}
