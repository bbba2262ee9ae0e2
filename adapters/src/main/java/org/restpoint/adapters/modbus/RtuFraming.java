package org.restpoint.adapters.modbus;

import java.time.Duration;
import java.util.Arrays;
import java.util.Optional;
import org.restpoint.adapters.checksum.Crc16;
import org.restpoint.adapters.modbus.ReadRequest.Answer;

/**
 * Frames on a serial line: {@code unit, PDU, CRC low byte, CRC high byte} (MODBUS over Serial Line,
 * Specification and Implementation Guide V1.02, 2.5.1).
 *
 * <p>An answer is known by unit, function, number of bytes and checksum rather than by the silence
 * around it, which no operating system passes on. So neither the echo of some RS-485 converters nor
 * a spike while the line is turned round spoils one. Half a frame stays half a frame.
 */
record RtuFraming() implements Framing {

  private static final int CRC_BYTES = 2;
  private static final int SHORTEST_FRAME = 5;
  private static final int BITS_A_CHARACTER = 11;
  private static final double CHARACTERS_OF_SILENCE = 3.5;
  private static final int FAST_BAUD = 19_200;
  private static final Duration FAST_SILENCE = Duration.ofNanos(1_750_000);

  /**
   * How long a line rests between frames: 3.5 characters of 11 bits, but above 19200 baud 1.75 ms
   * (2.5.1.1).
   */
  static Duration silence(int baud) {
    return baud > FAST_BAUD
        ? FAST_SILENCE
        : Duration.ofNanos(Math.round(CHARACTERS_OF_SILENCE * BITS_A_CHARACTER * 1e9 / baud));
  }

  @Override
  public Ask ask(int unit, ReadRequest request) {
    return new RtuAsk(unit, request);
  }

  /** A frame of any PDU. */
  static byte[] frame(int unit, byte[] pdu) {
    byte[] frame = new byte[1 + pdu.length + CRC_BYTES];
    frame[0] = (byte) unit;
    System.arraycopy(pdu, 0, frame, 1, pdu.length);
    int crc = Crc16.MODBUS.of(frame, 0, frame.length - CRC_BYTES);
    frame[frame.length - 2] = (byte) crc;
    frame[frame.length - 1] = (byte) (crc >> Byte.SIZE);
    return frame;
  }

  private static boolean isSound(byte[] bytes, int from, int to) {
    int crc = Crc16.MODBUS.of(bytes, from, to - CRC_BYTES);
    return (bytes[to - 2] & 0xFF) == (crc & 0xFF) && (bytes[to - 1] & 0xFF) == crc >> Byte.SIZE;
  }

  private record RtuAsk(int unit, ReadRequest request) implements Ask {

    @Override
    public byte[] bytes() {
      return frame(unit, request.pdu());
    }

    @Override
    public Optional<Answer> answer(Heard heard) {
      byte[] bytes = heard.bytes();
      for (int at = 0; at + SHORTEST_FRAME <= heard.length(); at++) {
        int pdu = (bytes[at] & 0xFF) == unit ? request.answerLength(bytes, at + 1) : 0;
        int end = at + 1 + pdu + CRC_BYTES;
        if (pdu > 0 && end <= heard.length() && isSound(bytes, at, end)) {
          return Optional.of(request.answer(bytes, at + 1));
        }
      }
      return Optional.empty();
    }

    /**
     * What is shorter than any frame may have been a spike, and the device's own echo no answer.
     */
    @Override
    public boolean isBroken(Heard heard) {
      return heard.length() >= SHORTEST_FRAME && !heard.is(bytes());
    }

    @Override
    public Optional<String> account(Heard heard) {
      int length = heard.length();
      if (length == 0 || heard.is(bytes())) {
        return Optional.empty();
      }
      byte[] question = bytes();
      boolean echoed =
          length > question.length
              && Arrays.equals(heard.bytes(), 0, question.length, question, 0, question.length);
      int from = echoed ? question.length : 0;
      boolean sound = length - from >= SHORTEST_FRAME && isSound(heard.bytes(), from, length);
      return Optional.of(
          sound
              ? "a sound frame came that does not answer the question, from unit %d: %s"
                  .formatted(heard.bytes()[from] & 0xFF, heard.text())
              : "no sound frame came, but " + heard.text());
    }
  }
}
