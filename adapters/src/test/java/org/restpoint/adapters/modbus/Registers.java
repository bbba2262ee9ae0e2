package org.restpoint.adapters.modbus;

import java.util.OptionalDouble;
import org.restpoint.adapters.modbus.Register.WordOrder;

/** Registers for tests. */
public final class Registers {

  private Registers() {}

  /** An input register, neither scaled nor turned round. */
  public static Register plain(NumberType type, int address) {
    return input(type, address, OptionalDouble.empty());
  }

  static Register missing(NumberType type, double standsForNone) {
    return input(type, 0, OptionalDouble.of(standsForNone));
  }

  private static Register input(NumberType type, int address, OptionalDouble missing) {
    return new Register(RegisterTable.INPUT, address, type, WordOrder.BIG, false, 1, 0, missing);
  }

  static Register register(WordOrder words, boolean bytesSwapped) {
    return new Register(
        RegisterTable.HOLDING,
        0,
        NumberType.INT32,
        words,
        bytesSwapped,
        1,
        0,
        OptionalDouble.empty());
  }
}
