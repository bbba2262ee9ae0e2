package org.restpoint.adapters.modbus;

/** What a number in registers is. Two's complement and IEEE 754. */
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
