package org.restpoint.adapters.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class LineFramingTest {

  private static final String TOO_LONG = "(too long)";

  private final List<String> lines = new ArrayList<>();
  private LineFraming framing = new LineFraming(LineEnd.CR_OR_LF, LineEncoding.LATIN_1);
  private final LineFraming.Lines collect =
      new LineFraming.Lines() {
        @Override
        public void line(String line) {
          lines.add(line);
        }

        @Override
        public void broken(String bytes, String reason) {
          lines.add("(" + bytes + ": " + reason + ")");
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
    framing.skip();
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

  @Test
  void aMarkOfItsOwnEndsALineAndNothingElseDoes() {
    framing = new LineFraming(new LineEnd.Mark(";"), LineEncoding.LATIN_1);
    send("one\r\n;two;;three");
    assertThat(lines).containsExactly("one\r\n", "two");
    assertThat(framing.heldBytes()).isEqualTo(5);
  }

  @Test
  void aMarkOfSeveralCharactersIsSeenThoughItIsCutOrBegunTwice() {
    framing = new LineFraming(new LineEnd.Mark("\r\n>"), LineEncoding.LATIN_1);
    send("one\r");
    send("\n");
    send(">two\r\r\n>\r\n>three\n>\r\n>");
    assertThat(lines).containsExactly("one", "two\r", "three\n>");
  }

  @Test
  void theMarkBehindTheLongestLineIsSeenAndBehindALongerOneToo() {
    framing = new LineFraming(new LineEnd.Mark("<>"), LineEncoding.LATIN_1);
    String longest = "x".repeat(LineFraming.LONGEST_LINE_BYTES);
    send(longest + "<>" + longest + "x<>next<>" + longest + "xxx");
    assertThat(lines).containsExactly(longest, TOO_LONG, "next", TOO_LONG);
    assertThat(framing.heldBytes()).isZero();
    send("x<");
    send(">after<>");
    assertThat(lines).endsWith("next", TOO_LONG, "after");
  }

  @ParameterizedTest
  @EnumSource(LineEncoding.class)
  void aLineComesAsItWasWrittenInEveryEncoding(LineEncoding encoding) {
    framing = new LineFraming(LineEnd.CR_OR_LF, encoding);
    byte[] bytes = encoding.bytes("E=1\u00B5V\r\nE=2 \u00B0C\r\n");
    framing.accept(bytes, bytes.length, collect);
    assertThat(lines).containsExactly("E=1\u00B5V", "E=2 \u00B0C");
  }

  @Test
  void aByteThatWasLostCostsOneLineInUtf16Too() {
    framing = new LineFraming(LineEnd.CR_OR_LF, LineEncoding.UTF_16LE);
    byte[] bytes = LineEncoding.UTF_16LE.bytes("E=1\rE=2\rE=3\r");
    byte[] damaged = Arrays.copyOfRange(bytes, 1, bytes.length);
    framing.accept(damaged, damaged.length, collect);
    assertThat(lines).containsExactly("(\0=\0001\0: its bytes are not UTF-16LE)", "E=2", "E=3");
  }

  @Test
  void bytesThatAreNotOfTheEncodingAreBroken() {
    framing = new LineFraming(LineEnd.CR_OR_LF, LineEncoding.UTF_8);
    send("21 \u00B0C\n21 \u00C2\u00B0C\n");
    assertThat(lines).containsExactly("(21 \u00B0C: its bytes are not UTF-8)", "21 \u00B0C");
  }

  @Test
  void recordsOfOneLengthNeedNoMarkAndAPauseShowsWhereOneBegins() {
    framing = new LineFraming(new LineEnd.Width(4), LineEncoding.LATIN_1);
    framing.skip();
    send("5678");
    assertThat(framing.skipping()).isTrue();
    framing.reset();
    send("-123-45");
    framing.pause(collect);
    framing.pause(collect);
    send("-67\n");
    assertThat(lines)
        .containsExactly("-123", "(-45: a pause came after 3 of its 4 bytes)", "-67\n");
  }

  @Test
  void aPauseWithinALineThatHasAnEndIsNothing() {
    send("E=1");
    framing.pause(collect);
    send("2\n");
    assertThat(lines).containsExactly("E=12");
  }

  @Test
  void whatIsHeldWhenNothingWillFollowIsCutOff() {
    send("E=1\nE=");
    framing.cutOff(collect);
    framing.cutOff(collect);
    assertThat(lines).containsExactly("E=1", "(E=: it was cut off)");
  }

  @Test
  void anEndThatCannotBeIsRefused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new LineEnd.Mark(""))
        .withMessage("a mark at the end of a line has 1 to 8 ASCII characters");
    assertThatIllegalArgumentException().isThrownBy(() -> new LineEnd.Mark("123456789"));
    assertThatIllegalArgumentException().isThrownBy(() -> new LineEnd.Mark("\u00B5"));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new LineEnd.Width(1025))
        .withMessage("a record has 1 to 1024 bytes, not 1025");
  }

  /** A thousand streams of lines, ends and overlong lines, each cut two ways. */
  @Test
  void anyChunkingOfTheBytesGivesTheSameLines() {
    Random random = new Random(20260712);
    List<LineEnd> ends = List.of(LineEnd.CR_OR_LF, new LineEnd.Mark("\r\n"), new LineEnd.Width(11));
    for (int run = 0; run < 999; run++) {
      framing = new LineFraming(ends.get(run % ends.size()), LineEncoding.LATIN_1);
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
