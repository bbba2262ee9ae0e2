package org.restpoint.acquisition.listen;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import org.junit.jupiter.api.Test;

class AskTest {

  private static final Duration EVERY = Duration.ofSeconds(1);

  @Test
  void whatIsTypedNamesControlCharacters() {
    assertThat(Ask.typed("READ\\r\\n", EVERY).text()).isEqualTo("READ\r\n");
    assertThat(Ask.typed("\\x1BA\\\\r\\t$1", EVERY).text()).isEqualTo("\u001bA\\r\t$1");
  }

  @Test
  void anotherCharacterAfterABackslashIsRefused() {
    for (String typed : new String[] {"\\q", "A\\", "\\x1", "\\xZZ"}) {
      assertThatThrownBy(() -> Ask.typed(typed, EVERY))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessage(
              "expected \\r, \\n, \\t, \\\\ or \\x and two hexadecimal digits after a backslash");
    }
    assertThatThrownBy(() -> Ask.typed("\\xFF", EVERY))
        .hasMessage("expected 1 to 256 ASCII characters to send");
    assertThatThrownBy(() -> Ask.typed("", EVERY))
        .hasMessage("expected 1 to 256 ASCII characters to send");
  }
}
