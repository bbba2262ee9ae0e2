package org.restpoint.adapters.modbus;

import java.util.ArrayList;
import java.util.List;

/**
 * The codec: a row of registers that is asked for, and what an answer to it says (MODBUS
 * Application Protocol Specification V1.1b3, 6.3, 6.4 and 7). Refuses, with an {@link
 * IllegalArgumentException}, a row of none or more than 125 and one that runs over the end.
 *
 * @param table which table
 * @param address the first register's, from 0
 * @param count how many
 */
record ReadRequest(RegisterTable table, int address, int count) {

  /** The specification's limit: the answer has 250 bytes then. */
  static final int MOST_REGISTERS = 125;

  /** Added to the function by an answer that is an exception. */
  static final int EXCEPTION = 0x80;

  private static final int ADDRESSES = 65_536;

  ReadRequest {
    if (count < 1 || count > MOST_REGISTERS || address < 0 || address + count > ADDRESSES) {
      throw new IllegalArgumentException(
          "1 to %d registers within 0 to 65535, not %d from %d"
              .formatted(MOST_REGISTERS, count, address));
    }
  }

  /** What an answer says. */
  sealed interface Answer {

    /**
     * The registers.
     *
     * @param words what each holds, 0 to 65535
     */
    record Registers(List<Integer> words) implements Answer {}

    /**
     * That the device will not or cannot.
     *
     * @param code why
     */
    record Refused(ExceptionCode code) implements Answer {}
  }

  /** What is sent: function, address, number of registers. */
  byte[] pdu() {
    return new byte[] {
      (byte) table.function(),
      (byte) (address >> Byte.SIZE),
      (byte) address,
      (byte) (count >> Byte.SIZE),
      (byte) count
    };
  }

  /** How many bytes of registers an answer has. */
  int registerBytes() {
    return 2 * count;
  }

  /**
   * How long the answer is that begins at a place, if one can begin there.
   *
   * @return its bytes; 0 when what stands there cannot be an answer to this
   */
  int answerLength(byte[] bytes, int at) {
    int function = bytes[at] & 0xFF;
    if (function == (table.function() | EXCEPTION)) {
      return 2;
    }
    boolean own = function == table.function() && (bytes[at + 1] & 0xFF) == registerBytes();
    return own ? 2 + registerBytes() : 0;
  }

  /** What the answer says that begins at a place, where {@link #answerLength} saw one. */
  Answer answer(byte[] bytes, int at) {
    if ((bytes[at] & EXCEPTION) != 0) {
      return new Answer.Refused(new ExceptionCode(bytes[at + 1] & 0xFF));
    }
    List<Integer> words = new ArrayList<>();
    for (int word = at + 2; words.size() < count; word += 2) {
      words.add(((bytes[word] & 0xFF) << Byte.SIZE) | (bytes[word + 1] & 0xFF));
    }
    return new Answer.Registers(words);
  }
}
