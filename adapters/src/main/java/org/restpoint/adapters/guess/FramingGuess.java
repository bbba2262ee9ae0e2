package org.restpoint.adapters.guess;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.restpoint.adapters.line.LineEncoding;
import org.restpoint.adapters.line.LineEnd;
import org.restpoint.adapters.line.LineFraming;

/**
 * Finds where the lines of a sample end.
 *
 * <ol>
 *   <li>Bytes that are zero at every other place are UTF-16; which one, the beginnings of the
 *       bursts tell. Other bytes above 127 are UTF-8 where they can be, and Latin-1 where not.
 *   <li>CR or LF end a line wherever one comes.
 *   <li>Otherwise the mark is a character, neither letter nor digit, that ends every burst.
 *   <li>Otherwise bursts of one length, or of its multiples, are records of a fixed length.
 *   <li>Otherwise the mark is a character that cuts the bytes into pieces that look alike.
 * </ol>
 *
 * <p>No line is made of what came before the first mark unless a quiet moment came before it, nor
 * of what came after the last.
 */
public final class FramingGuess {

  /** Marks of devices that send without a pause: control characters first, as they are surer. */
  private static final String MARKS = "\u0003\u0004\u001e\u001f\u0000;|#>!/";

  /** A mark or a length that was seen less often may be chance. */
  private static final int FEWEST = 3;

  /** Of UTF-16 text in Latin letters half of the bytes are zero. */
  private static final double ZEROS_OF_UTF_16 = 0.3;

  private FramingGuess() {}

  /** The lines; empty where nothing looks like an end of lines. */
  public static Optional<Framed> of(Sample sample) {
    LineEncoding encoding = encoding(sample);
    return end(sample, encoding).map(end -> framed(sample, end, encoding));
  }

  private static Framed framed(Sample sample, LineEnd end, LineEncoding encoding) {
    LineFraming framing = new LineFraming(end, encoding);
    if (!sample.wholeFromTheStart()) {
      framing.skip();
    }
    WholeLines lines = new WholeLines();
    for (byte[] burst : sample.bursts()) {
      framing.accept(burst, burst.length, lines);
      framing.pause(lines);
    }
    return new Framed(end, encoding, lines.whole);
  }

  /** Broken lines and such as are too long are none that a pattern could be guessed from. */
  private static final class WholeLines implements LineFraming.Lines {

    private final List<String> whole = new ArrayList<>();

    @Override
    public void line(String line) {
      if (!line.isBlank()) {
        whole.add(line);
      }
    }

    @Override
    public void broken(String bytes, String reason) {
      // Not a line.
    }

    @Override
    public void tooLong() {
      // Not a line.
    }
  }

  private static LineEncoding encoding(Sample sample) {
    byte[] bytes = sample.bytes();
    int zeros = 0;
    int high = 0;
    for (byte each : bytes) {
      zeros += each == 0 ? 1 : 0;
      high += each < 0 ? 1 : 0;
    }
    if (zeros > bytes.length * ZEROS_OF_UTF_16) {
      return LineFormats.beginWithZero(sample.bursts())
          ? LineEncoding.UTF_16BE
          : LineEncoding.UTF_16LE;
    }
    return high > 0 && LineFormats.isUtf8(bytes) ? LineEncoding.UTF_8 : LineEncoding.LATIN_1;
  }

  private static Optional<LineEnd> end(Sample sample, LineEncoding encoding) {
    if (hasCrOrLf(sample)) {
      return Optional.of(LineEnd.CR_OR_LF);
    }
    List<byte[]> bursts = whole(sample);
    if (encoding == LineEncoding.UTF_16LE || encoding == LineEncoding.UTF_16BE) {
      return Optional.empty();
    }
    return markAtTheEnds(bursts).or(() -> width(bursts)).or(() -> markAmong(sample));
  }

  private static boolean hasCrOrLf(Sample sample) {
    for (byte each : sample.bytes()) {
      if (each == '\r' || each == '\n') {
        return true;
      }
    }
    return false;
  }

  private static List<byte[]> whole(Sample sample) {
    List<byte[]> bursts = sample.bursts();
    return sample.wholeFromTheStart() || bursts.isEmpty()
        ? bursts
        : bursts.subList(1, bursts.size());
  }

  private static Optional<LineEnd> markAtTheEnds(List<byte[]> bursts) {
    if (bursts.size() < FEWEST) {
      return Optional.empty();
    }
    byte last = bursts.get(0)[bursts.get(0).length - 1];
    boolean everywhere = bursts.stream().allMatch(burst -> burst[burst.length - 1] == last);
    boolean mark = last >= 0 && last != ' ' && !Character.isLetterOrDigit(last) && last != '%';
    return everywhere && mark
        ? Optional.of(new LineEnd.Mark(String.valueOf((char) last)))
        : Optional.empty();
  }

  /** The commonest length of a burst, where nearly all others are its multiples. */
  private static Optional<LineEnd> width(List<byte[]> bursts) {
    Map<Integer, Integer> lengths = new HashMap<>();
    bursts.forEach(burst -> lengths.merge(burst.length, 1, Integer::sum));
    return lengths.entrySet().stream()
        .max(Map.Entry.comparingByValue())
        .filter(commonest -> commonest.getValue() >= FEWEST)
        .map(Map.Entry::getKey)
        .filter(length -> length <= LineFraming.LONGEST_LINE_BYTES)
        .filter(
            length ->
                bursts.stream().filter(burst -> burst.length % length == 0).count()
                    >= 0.8 * bursts.size())
        .map(LineEnd.Width::new);
  }

  private static Optional<LineEnd> markAmong(Sample sample) {
    String text = new String(sample.bytes(), StandardCharsets.ISO_8859_1);
    for (int i = 0; i < MARKS.length(); i++) {
      String mark = MARKS.substring(i, i + 1);
      List<String> pieces = LineFormats.pieces(text, mark);
      if (pieces.size() >= FEWEST && Likeness.of(pieces) == 1) {
        return Optional.of(new LineEnd.Mark(mark));
      }
    }
    return Optional.empty();
  }
}
