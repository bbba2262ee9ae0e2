package org.restpoint.adapters.modbus;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.restpoint.adapters.modbus.Registers.register;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.restpoint.adapters.modbus.Register.Told;
import org.restpoint.adapters.modbus.Register.WordOrder;

class RegisterTest {

  @ParameterizedTest
  @CsvSource({
    "INT16, 8000, -32768",
    "INT16, FFFF, -1",
    "UINT16, FFFF, 65535",
    "INT32, 80000000, -2147483648",
    "INT32, 00010000, 65536",
    "UINT32, FFFFFFFF, 4294967295",
    "FLOAT32, C2F6E979, -123.45600128173828",
    "FLOAT64, C05EDD2F1A9FBE77, -123.456"
  })
  void eachTypeIsReadFromItsBits(NumberType type, String bits, double expected) {
    assertThat(type.number(Long.parseUnsignedLong(bits, 16))).isEqualTo(expected);
  }

  @Test
  void wordsAndBytesStandInAnyOfFourOrders() {
    assertThat(told(register(WordOrder.BIG, false), 0x0102, 0x0304)).isEqualTo(0x01020304);
    assertThat(told(register(WordOrder.LITTLE, false), 0x0304, 0x0102)).isEqualTo(0x01020304);
    assertThat(told(register(WordOrder.BIG, true), 0x0201, 0x0403)).isEqualTo(0x01020304);
    assertThat(told(register(WordOrder.LITTLE, true), 0x0403, 0x0201)).isEqualTo(0x01020304);
  }

  private static double told(Register register, Integer... words) {
    return ((Told.Value) register.told(List.of(words), register.address())).number();
  }

  @Test
  void aRegisterIsReadFromItsPlaceInTheRowAndScaled() {
    Register scaled =
        new Register(
            RegisterTable.INPUT,
            12,
            NumberType.INT16,
            WordOrder.BIG,
            false,
            0.1,
            -5,
            OptionalDouble.empty());
    assertThat(scaled.told(List.of(1, 2, 1873, 3), 10)).isEqualTo(new Told.Value(1873 * 0.1 - 5));
  }

  @Test
  void theNumberForAMissingValueIsNone() {
    assertThat(Registers.missing(NumberType.INT16, -32_768).told(List.of(0x8000), 0))
        .isEqualTo(new Told.Nothing("it holds -32768, which stands for no value"));
    assertThat(Registers.missing(NumberType.FLOAT32, -9999.9).told(bits(-9999.9f), 0))
        .isEqualTo(new Told.Nothing("it holds -9999.900390625, which stands for no value"));
    assertThat(Registers.missing(NumberType.INT16, -32_768).told(List.of(0x8001), 0))
        .isEqualTo(new Told.Value(-32_767));
  }

  @Test
  void whatIsNoNumberIsNone() {
    Register register = Registers.plain(NumberType.FLOAT32, 0);
    assertThat(register.told(bits(Float.NaN), 0))
        .isEqualTo(new Told.Nothing("it holds NaN, which is no number"));
    assertThat(register.told(bits(Float.NEGATIVE_INFINITY), 0))
        .isEqualTo(new Told.Nothing("it holds -Infinity, which is no number"));
  }

  private static List<Integer> bits(float number) {
    int bits = Float.floatToRawIntBits(number);
    return List.of(bits >>> Short.SIZE, bits & 0xFFFF);
  }

  @Test
  void anAddressLiesInTheTableWithAllItsRegisters() {
    assertThat(Registers.plain(NumberType.FLOAT64, 65_532).end()).isEqualTo(65_536);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Registers.plain(NumberType.FLOAT64, 65_533))
        .withMessage("no 4 register(s) from address 65533: addresses are 0 to 65535");
    assertThatIllegalArgumentException().isThrownBy(() -> Registers.plain(NumberType.INT16, -1));
  }

  @Test
  void numbersNearEachOtherAreReadInOneRowOthersApart() {
    Register first = Registers.plain(NumberType.INT16, 10);
    assertThat(RegisterPlan.together(List.of(first, Registers.plain(NumberType.FLOAT32, 133))))
        .containsExactly(new ReadRequest(RegisterTable.INPUT, 10, 125));
    assertThat(RegisterPlan.together(List.of(Registers.plain(NumberType.FLOAT32, 134), first)))
        .containsExactly(
            new ReadRequest(RegisterTable.INPUT, 134, 2),
            new ReadRequest(RegisterTable.INPUT, 10, 1));
    assertThat(RegisterPlan.together(List.of(first, register(WordOrder.BIG, false))))
        .containsExactly(
            new ReadRequest(RegisterTable.INPUT, 10, 1),
            new ReadRequest(RegisterTable.HOLDING, 0, 2));
  }
}
