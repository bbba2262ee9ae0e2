package org.restpoint.config.station;

import java.util.OptionalDouble;

/**
 * A number in one register or several of a Modbus device.
 *
 * @param table which table
 * @param address the address of its first register, as sent: from 0
 * @param type what the number is
 * @param words in which order its registers stand
 * @param bytes in which order the two bytes of a register stand
 * @param scale what the number is multiplied by, not zero
 * @param offset what is added then
 * @param missing the number, before scaling, that stands for no value
 */
public record ModbusRegister(
    Table table,
    int address,
    NumberType type,
    Order words,
    Order bytes,
    double scale,
    double offset,
    OptionalDouble missing) {

  /** A table of registers. */
  public enum Table {
    /** Those that can only be read. */
    INPUT,
    /** Those that can be written as well. */
    HOLDING
  }

  /** What a number is. */
  public enum NumberType {
    /** A whole number with a sign, in one register. */
    INT16(1),
    /** A whole number without a sign, in one register. */
    UINT16(1),
    /** A whole number with a sign, in two registers. */
    INT32(2),
    /** A whole number without a sign, in two registers. */
    UINT32(2),
    /** A floating-point number of single precision, in two registers. */
    FLOAT32(2),
    /** A floating-point number of double precision, in four registers. */
    FLOAT64(4);

    private final int registers;

    NumberType(int registers) {
      this.registers = registers;
    }

    /** How many registers it takes. */
    public int registers() {
      return registers;
    }

    /** The number that these bits are; bits above its own are not looked at. */
    public double number(long bits) {
      return switch (this) {
        case INT16 -> (short) bits;
        case UINT16 -> bits & 0xFFFFL;
        case INT32 -> (int) bits;
        case UINT32 -> bits & 0xFFFF_FFFFL;
        case FLOAT32 -> Float.intBitsToFloat((int) bits);
        case FLOAT64 -> Double.longBitsToDouble(bits);
      };
    }
  }

  /** What comes first. */
  public enum Order {
    /** The higher bits. */
    BIG,
    /** The lower bits. */
    LITTLE
  }
}
