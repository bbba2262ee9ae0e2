package org.restpoint.adapters.checksum;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class XorTest {

  /** 0x31 to 0x39: the pairs 2^3, 4^5, 6^7 and 8^9 leave 1 each and so nothing; 1 is 0x31. */
  @Test
  void theDigitsOneToNineLeaveTheFirst() {
    assertThat(Xor.of("123456789".getBytes(US_ASCII))).isEqualTo(0x31);
  }

  @Test
  void onlyTheBytesBetweenTheTwoPlacesCount() {
    assertThat(Xor.of("$123456789*".getBytes(US_ASCII), 1, 10)).isEqualTo(0x31);
    assertThat(Xor.of(new byte[0])).isZero();
  }

  @Test
  void aByteAboveAsciiIsNotNegative() {
    assertThat(Xor.of(new byte[] {(byte) 0xFF, 0x0F})).isEqualTo(0xF0);
  }
}
