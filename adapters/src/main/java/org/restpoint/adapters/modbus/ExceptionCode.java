package org.restpoint.adapters.modbus;

/**
 * Why a device does not answer with registers (MODBUS Application Protocol Specification V1.1b3,
 * section 7), by name and with what to look at.
 *
 * @param code 0 to 255
 */
record ExceptionCode(int code) {

  private static final int ILLEGAL_DATA_ADDRESS = 2;

  /** Whether it says that one of the registers is not there. */
  boolean isIllegalDataAddress() {
    return code == ILLEGAL_DATA_ADDRESS;
  }

  String text() {
    return "exception %d, %s".formatted(code, name());
  }

  private String name() {
    return switch (code) {
      case 1 -> "illegal function";
      case ILLEGAL_DATA_ADDRESS -> "illegal data address";
      case 3 -> "illegal data value";
      case 4 -> "server device failure";
      case 5 -> "acknowledge";
      case 6 -> "server device busy";
      case 8 -> "memory parity error";
      case 10 -> "gateway path unavailable";
      case 11 -> "gateway target device failed to respond";
      default -> "which the specification does not name";
    };
  }

  /** A sentence without a full stop. */
  String remedy() {
    return switch (code) {
      case 1 ->
          "Set table to the other one of input and holding: the device does not have this one";
      case ILLEGAL_DATA_ADDRESS ->
          "Compare register with the device's list: addresses count from 0, so that a list's 30001"
              + " or 40001 is register 0, and as says how many registers are read";
      case 3 ->
          "Compare register and as with the device's list: it does not give that many at once";
      case 4, 8 -> "Look at the device: it reports a failure of its own";
      case 5, 6 -> "Ask less often (every): the device is busy";
      case 10 -> "Look at the gateway: it has no way to this unit";
      case 11 -> "Look at unit, and at the device behind the gateway: it does not answer there";
      default -> "Look the number up in the device's manual";
    };
  }
}
