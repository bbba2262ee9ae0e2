package org.restpoint.adapters.modbus;

import java.util.Optional;
import org.restpoint.adapters.modbus.ReadRequest.Answer;

/**
 * Frames on a TCP connection: {@code transaction, protocol 0, length, unit, PDU} (MODBUS Messaging
 * on TCP/IP Implementation Guide V1.0b, 3.1.3).
 *
 * <p>An answer is known by its transaction and by what it must be like, wherever it stands: the
 * late answer to an earlier ask has another transaction and is passed over, and so is what is no
 * frame at all.
 */
final class TcpFraming implements Framing {

  private static final int HEADER_BYTES = 7;
  private static final int TRANSACTIONS = 0x1_0000;

  private int transaction;

  @Override
  public Ask ask(int unit, ReadRequest request) {
    transaction = (transaction + 1) % TRANSACTIONS;
    return new TcpAsk(transaction, unit, request);
  }

  /** A frame of any PDU. */
  static byte[] frame(int transaction, int unit, byte[] pdu) {
    byte[] frame = new byte[HEADER_BYTES + pdu.length];
    putWord(frame, 0, transaction);
    putWord(frame, 4, 1 + pdu.length);
    frame[6] = (byte) unit;
    System.arraycopy(pdu, 0, frame, HEADER_BYTES, pdu.length);
    return frame;
  }

  private static void putWord(byte[] bytes, int at, int word) {
    bytes[at] = (byte) (word >> Byte.SIZE);
    bytes[at + 1] = (byte) word;
  }

  private static int word(byte[] bytes, int at) {
    return ((bytes[at] & 0xFF) << Byte.SIZE) | (bytes[at + 1] & 0xFF);
  }

  private record TcpAsk(int transaction, int unit, ReadRequest request) implements Ask {

    @Override
    public byte[] bytes() {
      return frame(transaction, unit, request.pdu());
    }

    @Override
    public Optional<Answer> answer(Heard heard) {
      byte[] bytes = heard.bytes();
      for (int at = 0; at + HEADER_BYTES + 2 <= heard.length(); at++) {
        int pdu = isOwn(bytes, at) ? request.answerLength(bytes, at + HEADER_BYTES) : 0;
        if (pdu > 0
            && word(bytes, at + 4) == 1 + pdu
            && at + HEADER_BYTES + pdu <= heard.length()) {
          return Optional.of(request.answer(bytes, at + HEADER_BYTES));
        }
      }
      return Optional.empty();
    }

    private boolean isOwn(byte[] bytes, int at) {
      return word(bytes, at) == transaction
          && word(bytes, at + 2) == 0
          && (bytes[at + 6] & 0xFF) == unit;
    }

    /** A network may pause within a frame. */
    @Override
    public boolean isBroken(Heard heard) {
      return false;
    }

    @Override
    public Optional<String> account(Heard heard) {
      byte[] bytes = heard.bytes();
      if (heard.length() == 0) {
        return Optional.empty();
      }
      boolean frame = heard.length() > HEADER_BYTES && word(bytes, 2) == 0;
      return Optional.of(
          frame
              ? "a frame came that does not answer the question (transaction %d, unit %d; asked were transaction %d, unit %d): %s"
                  .formatted(word(bytes, 0), bytes[6] & 0xFF, transaction, unit, heard.text())
              : "no Modbus frame came, but " + heard.text());
    }
  }
}
