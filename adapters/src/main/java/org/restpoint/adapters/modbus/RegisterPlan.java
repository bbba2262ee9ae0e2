package org.restpoint.adapters.modbus;

import java.util.ArrayList;
import java.util.List;

/**
 * Which rows of registers are read for a probe: one where both numbers fit in it, else one each. A
 * device may refuse a row for a register between them that it does not have; then they are read
 * apart.
 */
final class RegisterPlan {

  private RegisterPlan() {}

  /** The rows to ask for, in the order of the registers. */
  static List<ReadRequest> together(List<Register> registers) {
    int first = registers.stream().mapToInt(Register::address).min().orElseThrow();
    int end = registers.stream().mapToInt(Register::end).max().orElseThrow();
    boolean oneTable = registers.stream().map(Register::table).distinct().count() == 1;
    return oneTable && end - first <= ReadRequest.MOST_REGISTERS
        ? List.of(new ReadRequest(registers.get(0).table(), first, end - first))
        : apart(registers);
  }

  /** A row for each register. */
  static List<ReadRequest> apart(List<Register> registers) {
    List<ReadRequest> requests = new ArrayList<>();
    for (Register register : registers) {
      requests.add(
          new ReadRequest(register.table(), register.address(), register.type().registers()));
    }
    return requests;
  }
}
