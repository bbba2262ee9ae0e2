package org.restpoint.adapters.serial;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.restpoint.adapters.line.DecimalMark;
import org.restpoint.adapters.quantity.Meanings;

class SerialSettingsTest {

  private static final Pattern LINE = Pattern.compile("(?<millivolts>.*)");
  private static final Duration SECOND = Duration.ofSeconds(1);

  @Test
  void whatCannotBeReadIsRefused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> PortSettings.plain(" ", 9600))
        .withMessage("the serial port has no name");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> PortSettings.plain("ttyUSB0", 0))
        .withMessage("the speed 0 baud is not above zero");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> settings(LINE, Duration.ZERO, SECOND))
        .withMessage("the poll interval PT0S is not above zero");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> settings(LINE, SECOND, SECOND.negated()))
        .withMessage("the no-data limit PT-1S is not above zero");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> settings(Pattern.compile("E=(.*)"), SECOND, SECOND))
        .withMessageContaining("has no group named millivolts");
  }

  @Test
  void aBareNameIsADevice() {
    assertThat(SerialDevice.path("ttyUSB0")).isEqualTo(Path.of("/dev/ttyUSB0"));
    assertThat(SerialDevice.path("/tmp/ttyUSB0")).isEqualTo(Path.of("/tmp/ttyUSB0"));
    assertThat(SerialDevice.path("serial/by-id/x")).isEqualTo(Path.of("serial/by-id/x"));
  }

  private static SerialSettings settings(Pattern line, Duration pollEvery, Duration noDataAfter) {
    return new SerialSettings(
        line,
        Meanings.MILLIVOLTS,
        DecimalMark.POINT,
        Optional.empty(),
        Optional.empty(),
        pollEvery,
        noDataAfter);
  }
}
