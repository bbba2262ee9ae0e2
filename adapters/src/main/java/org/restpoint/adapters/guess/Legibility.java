package org.restpoint.adapters.guess;

import java.nio.charset.StandardCharsets;
import java.util.List;

/**
 * How much bytes look like lines of text: what tells the right speed and framing of a serial port
 * from a wrong one.
 *
 * <pre>score = p · (1 + a) / 2</pre>
 *
 * <p>with p the share of printable ASCII characters, CR, LF and tab among the bytes, and a the
 * share of whole lines that look as most of them do; a is 0 with fewer than two whole lines. 0
 * where nothing came.
 *
 * @param bytes how many bytes there were
 * @param printable p
 * @param alike a
 */
public record Legibility(int bytes, double printable, double alike) {

  /** Chance gives so much only rarely: bytes at a wrong speed are printable to about a third. */
  private static final double GOOD = 0.9;

  /** That of some bytes. */
  public static Legibility of(byte[] bytes) {
    int printable = 0;
    for (byte each : bytes) {
      boolean text = each >= ' ' && each < 0x7F;
      printable += text || each == '\r' || each == '\n' || each == '\t' ? 1 : 0;
    }
    String text = new String(bytes, StandardCharsets.ISO_8859_1).replace('\r', '\n');
    List<String> lines = LineFormats.pieces(text, "\n");
    return new Legibility(
        bytes.length,
        bytes.length == 0 ? 0 : (double) printable / bytes.length,
        lines.size() < 2 ? 0 : Likeness.of(lines));
  }

  /** From 0, nothing or noise, to 1, lines of text that look alike. */
  public double score() {
    return printable * (1 + alike) / 2;
  }

  /** Whether there is no need to try any further. */
  public boolean isGood() {
    return score() >= GOOD;
  }
}
