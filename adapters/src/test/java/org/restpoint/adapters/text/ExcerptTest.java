package org.restpoint.adapters.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

class ExcerptTest {

  @Test
  void printableTextStaysAsItIs() {
    assertThat(Excerpt.of("E=-12.3 mV \"~\"")).isEqualTo("E=-12.3 mV \"~\"");
  }

  @Test
  void whatCouldMisleadATerminalOrALogIsEscaped() {
    assertThat(Excerpt.of("a\\\u001B[2J\n\u00B0\u2028"))
        .isEqualTo("a\\\\\\x1B[2J\\x0A\\xB0\\u2028");
  }

  @Test
  void eightyCharactersAreShownAndNoMore() {
    assertThat(Excerpt.of("x".repeat(80))).isEqualTo("x".repeat(80));
    assertThat(Excerpt.of("x".repeat(81))).isEqualTo("x".repeat(77) + "...");
    assertThat(Excerpt.of("\0".repeat(1024))).isEqualTo("\\x00".repeat(19) + "...");
  }

  @Test
  void bytesAreShownOneByOne() {
    assertThat(Excerpt.of(new byte[] {'a', '\\', 0, (byte) 0xFF, '\n'}))
        .isEqualTo("a\\\\\\x00\\xFF\\x0A");
    assertThat(Excerpt.of(new byte[0])).isEmpty();
    assertThat(Excerpt.of("y".repeat(1_000_000).getBytes(StandardCharsets.UTF_8)))
        .isEqualTo("y".repeat(77) + "...");
  }
}
