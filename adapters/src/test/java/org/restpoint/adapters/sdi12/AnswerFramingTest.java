package org.restpoint.adapters.sdi12;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class AnswerFramingTest {

  private final AnswerFraming framing = new AnswerFraming();

  private static List<String> lines(AnswerFraming framing, String text) {
    byte[] bytes = text.getBytes(StandardCharsets.ISO_8859_1);
    return framing.lines(bytes, bytes.length);
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 5, 7, 11, 64})
  void bytesInAnyPiecesGiveTheSameLines(int piece) {
    byte[] bytes =
        "0M!00053\r\n0\r\n\0000+3.14\r\n\r\n1+2\n0+".getBytes(StandardCharsets.ISO_8859_1);
    AnswerFraming pieces = new AnswerFraming();
    List<String> lines = new ArrayList<>();
    for (int from = 0; from < bytes.length; from += piece) {
      byte[] part = Arrays.copyOfRange(bytes, from, Math.min(bytes.length, from + piece));
      lines.addAll(pieces.lines(part, part.length));
    }

    assertThat(lines).containsExactly("0M!00053", "0", "0+3.14", "", "1+2");
    assertThat(pieces.half()).isEqualTo("0+");
  }

  @Test
  void aMegabyteWithoutAnEndIsCutToAHundredCharacters() {
    String kilobyte = "+123".repeat(256);
    for (int i = 0; i < 1024; i++) {
      assertThat(lines(framing, kilobyte)).isEmpty();
    }

    assertThat(framing.half()).hasSize(AnswerFraming.LONGEST);
    assertThat(lines(framing, "\r\n0\r\n").get(1)).isEqualTo("0");
  }

  @Test
  void onlyTheBytesThatCameAreRead() {
    assertThat(framing.lines("0\r\n1\r\n".getBytes(StandardCharsets.ISO_8859_1), 3))
        .containsExactly("0");
  }
}
