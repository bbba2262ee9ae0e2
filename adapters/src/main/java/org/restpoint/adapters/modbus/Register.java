package org.restpoint.adapters.modbus;

import java.util.List;
import java.util.OptionalDouble;

/**
 * A number in one register or several, and what it becomes: {@code number · scale + offset}.
 *
 * <p>Bytes go high to low within a register, as the specification has it, unless they are swapped;
 * in which order the registers of a longer number stand is left open there, and differs.
 *
 * <p>Refuses, with an {@link IllegalArgumentException}, an address outside 0 to 65535, a number
 * that runs over the end of the table, a scale that is zero or not finite and an offset that is not
 * finite.
 *
 * @param table which table
 * @param address the address of its first register, as sent: from 0
 * @param type what the number is
 * @param words in which order its registers stand
 * @param bytesSwapped whether the low byte of each register comes first
 * @param scale what the number is multiplied by
 * @param offset what is added then
 * @param missing the number, before scaling, by which the device says that it has none
 */
public record Register(
    RegisterTable table,
    int address,
    NumberType type,
    WordOrder words,
    boolean bytesSwapped,
    double scale,
    double offset,
    OptionalDouble missing) {

  private static final int ADDRESSES = 65_536;

  /** In which order the registers of a number stand. */
  public enum WordOrder {
    /** The register with the highest bits has the lowest address. */
    BIG,
    /** The register with the highest bits has the highest address. */
    LITTLE
  }

  /** What a register says. */
  public sealed interface Told {

    /**
     * A number.
     *
     * @param number scaled, with its offset
     */
    record Value(double number) implements Told {}

    /**
     * That there is none.
     *
     * @param reason why, a clause without a full stop
     */
    record Nothing(String reason) implements Told {}
  }

  public Register {
    if (address < 0 || address + type.registers() > ADDRESSES) {
      throw new IllegalArgumentException(
          "no %d register(s) from address %d: addresses are 0 to 65535"
              .formatted(type.registers(), address));
    }
    if (scale == 0 || !Double.isFinite(scale) || !Double.isFinite(offset)) {
      throw new IllegalArgumentException(
          "scale %s and offset %s are finite, and the scale is not zero".formatted(scale, offset));
    }
  }

  /** The address after its last register. */
  int end() {
    return address + type.registers();
  }

  /**
   * What it says.
   *
   * <ul>
   *   <li>The number for missing ones says nothing; neither does one that is not finite.
   * </ul>
   *
   * @param row what a row of registers holds, in which this number is
   * @param first the address of the first of that row
   */
  Told told(List<Integer> row, int first) {
    double number = type.number(bits(row.subList(address - first, end() - first)));
    if (missing.isPresent() && isMissing(number, missing.getAsDouble())) {
      return new Told.Nothing("it holds %s, which stands for no value".formatted(shown(number)));
    }
    if (!Double.isFinite(number)) {
      return new Told.Nothing("it holds %s, which is no number".formatted(number));
    }
    return new Told.Value(number * scale + offset);
  }

  private long bits(List<Integer> registers) {
    long bits = 0;
    for (int i = 0; i < registers.size(); i++) {
      int word = registers.get(words == WordOrder.BIG ? i : registers.size() - 1 - i);
      int ordered = bytesSwapped ? Short.toUnsignedInt(Short.reverseBytes((short) word)) : word;
      bits = (bits << Short.SIZE) | ordered;
    }
    return bits;
  }

  /** A number of single precision is compared as one: -9999.9 is none in double precision. */
  private boolean isMissing(double number, double standsForNone) {
    return type == NumberType.FLOAT32
        ? (float) number == (float) standsForNone
        : number == standsForNone;
  }

  private String shown(double number) {
    boolean whole = number == Math.rint(number) && Math.abs(number) < 1L << Integer.SIZE;
    return whole ? Long.toString((long) number) : Double.toString(number);
  }
}
