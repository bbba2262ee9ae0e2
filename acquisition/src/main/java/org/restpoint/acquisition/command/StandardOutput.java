package org.restpoint.acquisition.command;

import java.io.BufferedWriter;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;

/** Standard output for many lines: in UTF-8 whatever the terminal, and not a system call a line. */
final class StandardOutput {

  private static final int BUFFER = 1 << 16;

  private StandardOutput() {}

  /** A writer that must be flushed at the end and is never closed. */
  static Writer buffered() {
    return new BufferedWriter(new OutputStreamWriter(System.out, StandardCharsets.UTF_8), BUFFER);
  }
}
