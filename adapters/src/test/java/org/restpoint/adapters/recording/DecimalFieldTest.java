package org.restpoint.adapters.recording;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class DecimalFieldTest {

  private final DecimalField field = new DecimalField('.');

  @ParameterizedTest
  @ValueSource(
      strings = {
        "0",
        "-0.0",
        "+1.5",
        ".5",
        "5.",
        "123.45",
        "-59.159",
        "1e3",
        "1.5E-7",
        "1e22",
        "1e23",
        "1e-22",
        "1e-23",
        "9007199254740992",
        "9007199254740993",
        "9007199254740992e1",
        "0.000000000000000000000000000000123",
        "000000000000000000000000000012.5",
        "0.1234567890123456789",
        "179769313486231580793728971405301e276",
        "1e400",
        "1e-400",
        "1e99999999999",
        "4.9e-324",
        "2.2250738585072011e-308"
      })
  void aNumberIsWhatJavaReads(String text) {
    assertThat(read(text)).isTrue();
    assertThat(Double.doubleToRawLongBits(field.value()))
        .isEqualTo(Double.doubleToRawLongBits(Double.parseDouble(text)));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "-",
        ".",
        "-.",
        "e5",
        "1e",
        "1e+",
        "1.2.3",
        "12,5",
        "0x1p3",
        "1d",
        "1f",
        "NaN",
        "Infinity",
        "--1",
        "1 2",
        "1e5.0",
        "1234567890123456789.1.2",
        "12345678901234567890d",
        "١٢"
      })
  void whatIsNoDecimalNumberIsNotRead(String text) {
    assertThat(read(text)).isFalse();
  }

  @Test
  void anyNumberIsWhatJavaReadsToTheLastBit() {
    Random random = new Random(20260402);
    for (int i = 0; i < 300_000; i++) {
      String text = any(random);
      assertThat(read(text)).as(text).isTrue();
      if (Double.doubleToRawLongBits(field.value())
          != Double.doubleToRawLongBits(Double.parseDouble(text))) {
        throw new AssertionError(text + " was read as " + field.value());
      }
    }
  }

  private static String any(Random random) {
    return switch (random.nextInt(4)) {
      case 0 -> {
        double any = Double.longBitsToDouble(random.nextLong());
        yield Double.toString(Double.isFinite(any) ? any : 1.0);
      }
      case 1 -> random.nextLong() + "e" + (random.nextInt(700) - 350);
      case 2 -> (random.nextInt(2000) - 1000) + "." + random.nextInt(1_000_000);
      default ->
          "%d.%d".formatted(random.nextInt(1000), random.nextLong() & Long.MAX_VALUE)
              + "E"
              + (random.nextInt(60) - 30);
    };
  }

  private boolean read(String text) {
    char[] within = ("7" + text + "7").toCharArray();
    return field.read(within, 1, within.length - 1);
  }
}
