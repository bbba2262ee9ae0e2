package org.restpoint.adapters.modbus;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;

/**
 * Made-up devices with registers, and what they do wrong. They answer what they are asked, each
 * with the next mischief that waits, if one does.
 */
public final class Devices {

  /** A register that a device has. */
  private record Place(int unit, int function, int address) {}

  private final Map<Place, Integer> words = new HashMap<>();
  private final Deque<UnaryOperator<byte[]>> mischief = new ArrayDeque<>();
  private byte[] held = {};

  /** From now on a unit has these registers. */
  public synchronized void hold(int unit, RegisterTable table, int address, int... values) {
    for (int i = 0; i < values.length; i++) {
      words.put(new Place(unit, table.function(), address + i), values[i]);
    }
  }

  /** From now on a unit has this number of double precision in four input registers. */
  public void hold(int unit, int address, double value) {
    long bits = Double.doubleToRawLongBits(value);
    hold(
        unit,
        RegisterTable.INPUT,
        address,
        (int) (bits >>> 48) & 0xFFFF,
        (int) (bits >>> 32) & 0xFFFF,
        (int) (bits >>> 16) & 0xFFFF,
        (int) bits & 0xFFFF);
  }

  /** The next answer is not sent. */
  public void beSilent() {
    spoil(frame -> new byte[0]);
  }

  /** The next answer has a wrong bit. */
  public void garble() {
    spoil(
        frame -> {
          frame[4] ^= 0x10;
          return frame;
        });
  }

  /** The next answer breaks off. */
  public void breakOff() {
    spoil(frame -> Arrays.copyOf(frame, frame.length / 2));
  }

  /** The next answer comes only with the one after it. */
  public void beLate() {
    spoil(
        frame -> {
          held = frame;
          return new byte[0];
        });
  }

  /** The next answer is another. */
  public synchronized void spoil(UnaryOperator<byte[]> instead) {
    mischief.add(instead);
  }

  /**
   * What is sent for a question.
   *
   * @param wrap makes a frame of a PDU
   */
  synchronized byte[] answer(int unit, byte[] pdu, UnaryOperator<byte[]> wrap) {
    byte[] right = registers(unit, pdu).map(wrap).orElseGet(() -> new byte[0]);
    byte[] before = held;
    held = new byte[0];
    UnaryOperator<byte[]> instead = mischief.poll();
    byte[] sent = instead == null ? right : instead.apply(right);
    byte[] all = Arrays.copyOf(before, before.length + sent.length);
    System.arraycopy(sent, 0, all, before.length, sent.length);
    return all;
  }

  /** The answer's PDU; empty for a unit that is not there. */
  private Optional<byte[]> registers(int unit, byte[] pdu) {
    if (words.keySet().stream().noneMatch(place -> place.unit() == unit)) {
      return Optional.empty();
    }
    int address = (pdu[1] & 0xFF) << Byte.SIZE | (pdu[2] & 0xFF);
    int count = pdu[4] & 0xFF;
    byte[] answer = new byte[2 + 2 * count];
    answer[0] = pdu[0];
    answer[1] = (byte) (2 * count);
    for (int i = 0; i < count; i++) {
      Integer word = words.get(new Place(unit, pdu[0], address + i));
      if (word == null) {
        return Optional.of(new byte[] {(byte) (pdu[0] | ReadRequest.EXCEPTION), 2});
      }
      answer[2 + 2 * i] = (byte) (word >> Byte.SIZE);
      answer[3 + 2 * i] = word.byteValue();
    }
    return Optional.of(answer);
  }
}
