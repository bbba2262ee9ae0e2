package org.restpoint.adapters.guess;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * What a port hears that is set other than the meter, worked out bit by bit: the meter's levels on
 * the wire, sampled at the port's speed and cut into its characters.
 */
class LegibilityTest {

  private static final int STEPS_A_SECOND = 1_152_000;

  /** How characters stand on the wire. */
  private record Wire(int baud, int dataBits, boolean even) {}

  private static byte[] heard(Wire sent, Wire set) {
    List<Boolean> levels = new ArrayList<>();
    for (byte character : textOfTheMeter()) {
      List<Boolean> bits = new ArrayList<>();
      bits.add(false);
      int ones = 0;
      for (int bit = 0; bit < sent.dataBits(); bit++) {
        boolean one = (character >> bit & 1) == 1;
        ones += one ? 1 : 0;
        bits.add(one);
      }
      if (sent.even()) {
        bits.add(ones % 2 == 1);
      }
      bits.add(true);
      for (boolean bit : bits) {
        for (int step = 0; step < STEPS_A_SECOND / sent.baud(); step++) {
          levels.add(bit);
        }
      }
    }
    ByteArrayOutputStream heard = new ByteArrayOutputStream();
    int stepsABit = STEPS_A_SECOND / set.baud();
    int bits = 1 + set.dataBits() + (set.even() ? 1 : 0);
    int at = 0;
    while (at + (bits + 1) * stepsABit < levels.size()) {
      if (levels.get(at)) {
        at++;
      } else {
        int character = 0;
        for (int bit = 0; bit < set.dataBits(); bit++) {
          character |= levels.get(at + stepsABit / 2 + (1 + bit) * stepsABit) ? 1 << bit : 0;
        }
        heard.write(character);
        at += stepsABit / 2 + bits * stepsABit;
      }
    }
    return heard.toByteArray();
  }

  private static byte[] textOfTheMeter() {
    ByteArrayOutputStream text = new ByteArrayOutputStream();
    for (byte[] line : Meter.bursts(i -> Meter.written("E=%.2f mV T=25.1 C\r\n", Meter.noise(i)))) {
      text.writeBytes(line);
    }
    return text.toByteArray();
  }

  @Test
  void theRightSettingIsGoodAndEveryOtherSpeedIsNot() {
    Wire meter = new Wire(9600, 8, false);

    assertThat(Legibility.of(heard(meter, meter)).isGood()).isTrue();
    for (int baud : new int[] {1200, 2400, 4800, 19200, 38400, 57600, 115200}) {
      Legibility other = Legibility.of(heard(meter, new Wire(baud, 8, false)));
      assertThat(other.isGood()).as("%d baud: %s", baud, other).isFalse();
      assertThat(other.score()).as("%d baud", baud).isLessThan(0.7);
    }
  }

  @Test
  void aParityBitTakenForADataBitIsNotGoodAndTheRightFramingIs() {
    Wire meter = new Wire(19200, 7, true);

    assertThat(Legibility.of(heard(meter, new Wire(19200, 8, false))).isGood()).isFalse();
    assertThat(Legibility.of(heard(meter, meter)).score()).isEqualTo(1);
  }

  @Test
  void silenceIsWorthNothing() {
    assertThat(Legibility.of(new byte[0])).isEqualTo(new Legibility(0, 0, 0));
  }
}
