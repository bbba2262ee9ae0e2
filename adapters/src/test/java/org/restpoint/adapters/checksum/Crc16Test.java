package org.restpoint.adapters.checksum;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

class Crc16Test {

  private static final List<Crc16> ALL =
      List.of(Crc16.MODBUS, Crc16.ARC, Crc16.IBM_3740, Crc16.XMODEM, Crc16.KERMIT);

  @ParameterizedTest
  @CsvFileSource(resources = "/published/crc16.csv", useHeadersInDisplayName = true)
  void eachNamedOneIsTheCataloguesAndGivesItsCheckValue(
      String name, String polynomial, String initial, boolean reflected, String check) {
    Crc16 crc = new Crc16(name, Integer.decode(polynomial), Integer.decode(initial), reflected);

    assertThat(ALL).contains(crc);
    assertThat(crc.of("123456789".getBytes(US_ASCII))).isEqualTo(Integer.decode(check));
  }

  @Test
  void onlyTheBytesBetweenTheTwoPlacesCount() {
    byte[] bytes = "xx123456789y".getBytes(US_ASCII);

    assertThat(Crc16.MODBUS.of(bytes, 2, 11)).isEqualTo(0x4B37);
    assertThat(Crc16.MODBUS.of(bytes, 2, 2)).isEqualTo(0xFFFF);
    assertThatThrownBy(() -> Crc16.MODBUS.of(bytes, 2, 13))
        .isInstanceOf(IndexOutOfBoundsException.class);
  }

  @Test
  void everySingleWrongBitIsFound() {
    byte[] right = "ch2 +187.4 mV".getBytes(US_ASCII);

    for (Crc16 crc : ALL) {
      for (int bit = 0; bit < right.length * Byte.SIZE; bit++) {
        byte[] wrong = right.clone();
        wrong[bit / Byte.SIZE] ^= (byte) (1 << bit % Byte.SIZE);
        assertThat(crc.of(wrong)).isNotEqualTo(crc.of(right));
      }
    }
  }

  @Test
  void moreThanSixteenBitsAreRefused() {
    assertThatThrownBy(() -> new Crc16("too wide", 0x18005, 0, true))
        .hasMessage("polynomial 0x18005 and initial value 0x0 have 16 bits at most");
  }
}
