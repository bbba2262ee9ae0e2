package org.restpoint.adapters.modbus;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.restpoint.adapters.modbus.Framing.Ask;
import org.restpoint.adapters.modbus.ReadRequest.Answer;

/** How an answer is found among whatever comes. */
class FramingTest {

  private static final ReadRequest REQUEST = new ReadRequest(RegisterTable.INPUT, 0x0401, 2);
  private static final byte[] PDU = {4, 4, 0x12, 0x34, (byte) 0xAB, (byte) 0xCD};
  private static final Answer ANSWER = new Answer.Registers(List.of(0x1234, 0xABCD));
  private static final byte[] RTU_ANSWER = RtuFraming.frame(5, PDU);

  private final Ask rtu = new RtuFraming().ask(5, REQUEST);
  private final Ask tcp = new TcpFraming().ask(5, REQUEST);
  private final Heard heard = new Heard();

  private void hears(byte[]... parts) {
    for (byte[] part : parts) {
      heard.add(part, part.length);
    }
  }

  @Test
  void anAnswerIsFoundInAnyChunkingBehindAnyBytes() {
    Random random = new Random(5);
    for (int run = 0; run < 500; run++) {
      byte[] before = new byte[random.nextInt(300)];
      random.nextBytes(before);
      boolean overTcp = run % 2 == 0;
      Ask ask = overTcp ? new TcpFraming().ask(5, REQUEST) : rtu;
      byte[] answer = overTcp ? TcpFraming.frame(1, 5, PDU) : RTU_ANSWER;
      int cut = random.nextInt(answer.length);
      Heard chunks = new Heard();
      chunks.add(before, before.length);
      chunks.add(answer, cut);
      assertThat(ask.answer(chunks)).isEmpty();
      byte[] rest = Arrays.copyOfRange(answer, cut, answer.length);
      chunks.add(rest, rest.length);
      assertThat(ask.answer(chunks)).contains(ANSWER);
    }
  }

  @Test
  void theEchoOfTheQuestionIsNoAnswerAndNoHindrance() {
    hears(rtu.bytes());
    assertThat(rtu.answer(heard)).isEmpty();
    assertThat(rtu.isBroken(heard)).isFalse();
    assertThat(rtu.account(heard)).isEmpty();
    hears(RTU_ANSWER);
    assertThat(rtu.answer(heard)).contains(ANSWER);
  }

  @Test
  void aSpikeBeforeTheAnswerDoesNotSpoilIt() {
    hears(new byte[] {0, (byte) 0xFF});
    assertThat(rtu.isBroken(heard)).isFalse();
    hears(RTU_ANSWER);
    assertThat(rtu.answer(heard)).contains(ANSWER);
  }

  @Test
  void oneWrongBitIsNoAnswer() {
    for (int bit = 0; bit < RTU_ANSWER.length * Byte.SIZE; bit++) {
      byte[] wrong = RTU_ANSWER.clone();
      wrong[bit / Byte.SIZE] ^= (byte) (1 << bit % Byte.SIZE);
      Heard bits = new Heard();
      bits.add(wrong, wrong.length);
      assertThat(rtu.answer(bits)).isEmpty();
      assertThat(rtu.isBroken(bits)).isTrue();
    }
    hears(new byte[] {5, 4, 4, 0x12, 0x34, (byte) 0xAB, (byte) 0xCC, 0, 0});
    assertThat(rtu.account(heard))
        .contains("no sound frame came, but 9 bytes: 05 04 04 12 34 AB CC 00 00");
  }

  @Test
  void theAnswerOfAnotherUnitIsNone() {
    hears(rtu.bytes(), RtuFraming.frame(6, PDU));
    assertThat(rtu.answer(heard)).isEmpty();
    assertThat(rtu.account(heard))
        .contains(
            "a sound frame came that does not answer the question, from unit 6: 17 bytes:"
                + " 05 04 04 01 00 02 20 BF 06 04 04 12 34 AB CD 77 …");
  }

  @Test
  void anAnswerToAnotherFunctionOrOfAnotherLengthIsNone() {
    hears(RtuFraming.frame(5, new byte[] {3, 4, 1, 2, 3, 4}));
    hears(RtuFraming.frame(5, new byte[] {4, 2, 1, 2}));
    hears(RtuFraming.frame(5, new byte[] {(byte) 0x83, 2}));
    assertThat(rtu.answer(heard)).isEmpty();
  }

  @Test
  void anExceptionIsAnAnswer() {
    hears(RtuFraming.frame(5, new byte[] {(byte) 0x84, 2}));
    assertThat(rtu.answer(heard)).contains(new Answer.Refused(new ExceptionCode(2)));
    Heard other = new Heard();
    byte[] frame = TcpFraming.frame(1, 5, new byte[] {(byte) 0x84, 11});
    other.add(frame, frame.length);
    assertThat(tcp.answer(other)).contains(new Answer.Refused(new ExceptionCode(11)));
  }

  @Test
  void theLateAnswerToAnEarlierTransactionIsNone() {
    TcpFraming framing = new TcpFraming();
    framing.ask(5, REQUEST);
    Ask second = framing.ask(5, REQUEST);
    hears(TcpFraming.frame(1, 5, PDU));
    assertThat(second.answer(heard)).isEmpty();
    assertThat(second.account(heard).orElseThrow())
        .startsWith(
            "a frame came that does not answer the question (transaction 1, unit 5; asked were"
                + " transaction 2, unit 5): 13 bytes: 00 01 00 00 00 07 05 04");
    hears(TcpFraming.frame(2, 5, PDU));
    assertThat(second.answer(heard)).contains(ANSWER);
  }

  @Test
  void transactionsBeginAgainAfterTheLast() {
    TcpFraming framing = new TcpFraming();
    for (int ask = 1; ask < 0xFFFF; ask++) {
      framing.ask(5, REQUEST);
    }
    assertThat(framing.ask(5, REQUEST).bytes()).startsWith(0xFF, 0xFF, 0, 0);
    assertThat(framing.ask(5, REQUEST).bytes()).startsWith(0, 0, 0, 0);
  }

  @Test
  void nothingHeardIsNothingToTell() {
    assertThat(rtu.account(heard)).isEmpty();
    assertThat(tcp.account(heard)).isEmpty();
    assertThat(rtu.isBroken(heard)).isFalse();
  }

  @Test
  void aFloodIsHeardOnlyAtItsEnd() {
    byte[] flood = new byte[100_000];
    hears(flood);
    assertThat(heard.length()).isEqualTo(Heard.MOST_BYTES);
    assertThat(tcp.account(heard).orElseThrow()).contains("100000 bytes: 00 00");
    hears(RTU_ANSWER);
    assertThat(rtu.answer(heard)).contains(ANSWER);
  }

  @Test
  void theLineRestsThreeAndAHalfCharactersButNoLessThanTheSpecificationHasItWhenFast() {
    assertThat(RtuFraming.silence(9600)).isEqualTo(Duration.ofNanos(4_010_417));
    assertThat(RtuFraming.silence(19_200)).isEqualTo(Duration.ofNanos(2_005_208));
    assertThat(RtuFraming.silence(115_200)).isEqualTo(Duration.ofNanos(1_750_000));
  }
}
