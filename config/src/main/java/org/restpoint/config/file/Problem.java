package org.restpoint.config.file;

import java.util.Optional;

/**
 * One thing that is wrong with a station file, told for the person who wrote it.
 *
 * @param key the key's path, e.g. {@code probes.no3-a.settle.within}, or the file's name where the
 *     whole file is meant
 * @param line the line in the file from 1; 0 where no line can be told
 * @param expected what should stand there
 * @param found what stands there
 * @param remedy what to do about it, where that is not plain from the rest
 */
public record Problem(
    String key, int line, String expected, String found, Optional<String> remedy) {

  /** Checks the line; a negative one is a fault of the program. */
  public Problem {
    if (line < 0) {
      throw new IllegalArgumentException("a line is counted from 1, 0 for none: " + line);
    }
  }

  /**
   * The problem as one line of text: {@code key (line N): expected ...; found ...; remedy}.
   *
   * @return the text, without a line break
   */
  public String text() {
    String where = line == 0 ? key : key + " (line " + line + ")";
    String told = where + ": expected " + expected + "; found " + found;
    return remedy.map(what -> told + "; " + what).orElse(told);
  }
}
