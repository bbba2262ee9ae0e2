package org.restpoint.adapters.line;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class LineFramingTest {

  private static final String TOO_LONG = "(too long)";

  private final List<String> lines = new ArrayList<>();
  private final LineFraming framing = new LineFraming();
  private final LineFraming.Lines collect =
      new LineFraming.Lines() {
        @Override
        public void line(String line) {
          lines.add(line);
        }

        @Override
        public void tooLong() {
          lines.add(TOO_LONG);
        }
      };

  private void send(String text) {
    byte[] bytes = text.getBytes(StandardCharsets.ISO_8859_1);
    framing.accept(bytes, bytes.length, collect);
  }

  @Test
  void aLineEndsAtCrAtLfOrAtBoth() {
    send("one\rtwo\nthree\r\nfour\n\rfive");
    assertThat(lines).containsExactly("one", "two", "three", "four");
    assertThat(framing.heldBytes()).isEqualTo(4);
    send("\n");
    assertThat(lines).endsWith("five");
  }

  @Test
  void emptyLinesAreNothing() {
    send("\r\n\r\n\n\n\r");
    assertThat(lines).isEmpty();
  }

  @Test
  void halfALineIsForgottenOnReset() {
    send("E=12");
    framing.reset();
    send("E=34\n");
    assertThat(lines).containsExactly("E=34");
  }

  @Test
  void aLineWhoseBeginningWasNotSeenIsPassedOver() {
    framing.skipToTerminator();
    assertThat(framing.skipping()).isTrue();
    send("3.4\n-123.4\n");
    assertThat(framing.skipping()).isFalse();
    assertThat(lines).containsExactly("-123.4");
  }

  @Test
  void theLongestLineIsTakenAndOneByteMoreIsNot() {
    String longest = "x".repeat(LineFraming.LONGEST_LINE_BYTES);
    send(longest + "\r\n" + longest + "x\r\nnext\r\n");
    assertThat(lines).containsExactly(longest, TOO_LONG, "next");
  }

  @Test
  void anEndlessLineIsToldOnceAndHoldsNothing() {
    for (int i = 0; i < 10_000; i++) {
      send("no end of it ");
    }
    assertThat(lines).containsExactly(TOO_LONG);
    assertThat(framing.heldBytes()).isZero();
  }

  @Test
  void everyByteIsACharacter() {
    byte[] all = new byte[256];
    for (int i = 0; i < all.length; i++) {
      all[i] = (byte) i;
    }
    framing.accept(all, all.length, collect);
    send("\n");
    assertThat(String.join("", lines)).hasSize(254).contains("\0", "\u00B0", "\u00FF");
  }

  @Test
  void onlyTheCountedBytesAreTaken() {
    framing.accept("one\ntwo\n".getBytes(StandardCharsets.ISO_8859_1), 5, collect);
    assertThat(lines).containsExactly("one");
    assertThat(framing.heldBytes()).isEqualTo(1);
  }

  /** A thousand streams of lines, ends and overlong lines, each cut two ways. */
  @Test
  void anyChunkingOfTheBytesGivesTheSameLines() {
    Random random = new Random(20260712);
    for (int run = 0; run < 1_000; run++) {
      byte[] stream = stream(random);
      List<String> whole = linesOf(stream, random, stream.length + 1);
      assertThat(linesOf(stream, random, 1 + random.nextInt(64))).isEqualTo(whole);
      assertThat(linesOf(stream, random, 1)).isEqualTo(whole);
    }
  }

  private List<String> linesOf(byte[] stream, Random random, int longestChunk) {
    framing.reset();
    lines.clear();
    int from = 0;
    while (from < stream.length) {
      int to = Math.min(stream.length, from + 1 + random.nextInt(longestChunk));
      byte[] chunk = Arrays.copyOfRange(stream, from, to);
      framing.accept(chunk, chunk.length, collect);
      from = to;
    }
    return List.copyOf(lines);
  }

  private static byte[] stream(Random random) {
    StringBuilder text = new StringBuilder();
    String[] pieces = {"E=-12.3 mV", "\r", "\n", "\r\n", "\0", "\u00FF", "9", "\n\r"};
    for (int i = random.nextInt(60); i > 0; i--) {
      text.append(
          random.nextInt(50) == 0
              ? "x".repeat(LineFraming.LONGEST_LINE_BYTES - 3 + random.nextInt(8))
              : pieces[random.nextInt(pieces.length)]);
    }
    return text.toString().getBytes(StandardCharsets.ISO_8859_1);
  }
}
