package org.restpoint.adapters.modbus;

/**
 * The two tables of 16-bit registers, each with the function that reads it (MODBUS Application
 * Protocol Specification V1.1b3, 6.3 and 6.4).
 */
public enum RegisterTable {
  /** Those that can be written as well: function 3. */
  HOLDING(0x03),
  /** Those that can only be read: function 4. */
  INPUT(0x04);

  private final int function;

  RegisterTable(int function) {
    this.function = function;
  }

  int function() {
    return function;
  }
}
