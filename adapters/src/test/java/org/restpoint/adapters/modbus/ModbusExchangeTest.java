package org.restpoint.adapters.modbus;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.time.Duration;
import java.util.HexFormat;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.restpoint.adapters.bus.Outcome;
import org.restpoint.adapters.quantity.Meaning;
import org.restpoint.adapters.quantity.Parsed;
import org.restpoint.adapters.quantity.PotentialScale;
import org.restpoint.adapters.quantity.TemperatureScale;

/** What one poll asks, and what it makes of what comes. */
class ModbusExchangeTest {

  private static final Duration PATIENCE = Duration.ofSeconds(1);
  private static final byte[] QUIET = {};

  private final ScriptedTurn turn = new ScriptedTurn();
  private final Conversation line = Conversation.rtu(19_200);
  private final ModbusExchange both = exchange(line, 5, 10, Optional.of(12), 1);

  private static ModbusExchange exchange(
      Conversation over, int unit, int potential, Optional<Integer> temperature, int retries) {
    return new ModbusExchange(
        over,
        new ModbusSettings(
            unit,
            Optional.of(Registers.plain(NumberType.INT16, potential)),
            temperature.map(address -> Registers.plain(NumberType.INT16, address)),
            new Meaning(
                Optional.of(PotentialScale.MILLIVOLTS),
                temperature.map(address -> TemperatureScale.CELSIUS)),
            Duration.ofSeconds(5),
            PATIENCE,
            retries,
            Duration.ofMinutes(1)),
        "Check the wiring");
  }

  /** An answer with input registers. */
  private static byte[] rtu(int unit, int... words) {
    return RtuFraming.frame(unit, pdu(words));
  }

  private static byte[] pdu(int... words) {
    byte[] pdu = new byte[2 + 2 * words.length];
    pdu[0] = 4;
    pdu[1] = (byte) (2 * words.length);
    for (int i = 0; i < words.length; i++) {
      pdu[2 + 2 * i] = (byte) (words[i] >> Byte.SIZE);
      pdu[3 + 2 * i] = (byte) words[i];
    }
    return pdu;
  }

  private static byte[] refusal(int unit, int code) {
    return RtuFraming.frame(unit, new byte[] {(byte) 0x84, (byte) code});
  }

  private static Outcome values(double millivolts, double celsius) {
    return new Outcome.Values(
        new Parsed.Values(OptionalDouble.of(millivolts), OptionalDouble.of(celsius)));
  }

  private static Outcome millivolts(double millivolts) {
    return new Outcome.Values(
        new Parsed.Values(OptionalDouble.of(millivolts), OptionalDouble.empty()));
  }

  private String sent(int ask) {
    return HexFormat.of().formatHex(turn.sent.get(ask), 0, 6);
  }

  @Test
  void bothNumbersAreReadAtOnce() throws Exception {
    turn.reads(rtu(5, 184, 0xFFFF, 21));
    assertThat(both.poll(turn)).isEqualTo(values(184, 21));
    assertThat(sent(0)).isEqualTo("0504000a0003");
    assertThat(turn.pauses).containsExactly(RtuFraming.silence(19_200));
  }

  @Test
  void aDeviceThatRefusesWhatLiesBetweenIsReadInTwo() throws Exception {
    turn.reads(refusal(5, 2), rtu(5, 184), rtu(5, 21));
    assertThat(both.poll(turn)).isEqualTo(values(184, 21));
    turn.reads(rtu(5, 185), rtu(5, 22));
    assertThat(both.poll(turn)).isEqualTo(values(185, 22));
    assertThat(turn.sent).hasSize(5);
    assertThat(sent(3)).isEqualTo("0504000a0001");
    assertThat(sent(4)).isEqualTo("0504000c0001");
    turn.reads(refusal(5, 2));
    assertThat(both.poll(turn))
        .isEqualTo(
            new Outcome.Rejected(
                "exception 2, illegal data address (input register 10)",
                new ExceptionCode(2).remedy()));
  }

  @ParameterizedTest
  @CsvSource({
    "1, illegal function",
    "3, illegal data value",
    "4, server device failure",
    "5, acknowledge",
    "6, server device busy",
    "8, memory parity error",
    "10, gateway path unavailable",
    "11, gateway target device failed to respond",
    "200, which the specification does not name"
  })
  void anExceptionIsToldByItsName(int code, String name) throws Exception {
    turn.reads(refusal(5, code));
    Outcome.Rejected rejected = (Outcome.Rejected) both.poll(turn);
    assertThat(rejected.reason())
        .isEqualTo("exception %d, %s (input registers 10 to 12)", code, name);
    assertThat(rejected.remedy()).isNotEmpty();
    assertThat(turn.sent).hasSize(1);
  }

  @Test
  void aMissedAnswerIsAskedForAgainAndADeviceThatIsAwayOnlyOnce() throws Exception {
    turn.reads(new byte[10][0]).reads(rtu(5, 1, 0, 2));
    assertThat(both.poll(turn)).isEqualTo(values(1, 2));
    assertThat(both.poll(turn)).isEqualTo(new Outcome.NoAnswer());
    assertThat(turn.sent).hasSize(4);
    assertThat(both.poll(turn)).isEqualTo(new Outcome.NoAnswer());
    assertThat(turn.sent).hasSize(5);
    turn.reads(rtu(5, 3, 0, 4));
    assertThat(both.poll(turn)).isEqualTo(values(3, 4));
    assertThat(both.poll(turn)).isEqualTo(new Outcome.NoAnswer());
    assertThat(turn.sent).hasSize(8);
  }

  @Test
  void aGarbledAnswerIsRejectedWhenTheLineIsQuietAndAskedForAgain() throws Exception {
    byte[] garbled = rtu(5, 184, 0, 21);
    garbled[4] ^= 0x40;
    turn.reads(garbled, QUIET).reads(rtu(5, 184, 0, 21));
    Outcome.Again again = (Outcome.Again) both.poll(turn);
    assertThat(again.rejected().reason())
        .startsWith("no sound frame came, but 11 bytes: 05 04 06 00 F8");
    assertThat(again.rejected().remedy()).isEqualTo("Check the wiring");
    assertThat(again.next().poll(turn)).isEqualTo(values(184, 21));
    turn.reads(garbled, QUIET, garbled, QUIET);
    Outcome.Again second = (Outcome.Again) both.poll(turn);
    assertThat(second.next().poll(turn)).isInstanceOf(Outcome.Rejected.class);
  }

  @Test
  void aFloodOfNoiseEndsWithThePatience() throws Exception {
    turn.floods();
    assertThat(exchange(line, 5, 10, Optional.empty(), 0).poll(turn))
        .isEqualTo(
            new Outcome.Rejected(
                "no sound frame came, but 256000 bytes: 00 00 00 00 00 00 00 00 00 00 00 00 00 00 00 00 …",
                "Check the wiring"));
  }

  @Test
  void whatCameBeforeTheQuestionIsNoAnswerToIt() throws Exception {
    turn.hasHeard(rtu(5, 999, 0, 99));
    turn.reads(rtu(5, 184, 0, 21));
    assertThat(both.poll(turn)).isEqualTo(values(184, 21));
  }

  @Test
  void theLateAnswerToOneQuestionIsNotTakenForThatToAnother() throws Exception {
    ModbusExchange one = exchange(line, 5, 10, Optional.empty(), 0);
    ModbusExchange other = exchange(line, 5, 20, Optional.empty(), 0);
    assertThat(one.poll(turn)).isEqualTo(new Outcome.NoAnswer());
    turn.reads(QUIET, rtu(5, 111)).reads(new byte[9][0]).reads(rtu(5, 222));
    assertThat(other.poll(turn)).isEqualTo(millivolts(222));
  }

  @Test
  void afterALateAnswerWasTakenItsOwnIsStillWaitedFor() throws Exception {
    ModbusExchange one = exchange(line, 5, 10, Optional.empty(), 1);
    ModbusExchange other = exchange(line, 5, 20, Optional.empty(), 0);
    turn.reads(new byte[10][0]).reads(rtu(5, 111));
    assertThat(one.poll(turn)).isEqualTo(millivolts(111));
    turn.reads(rtu(5, 112)).reads(new byte[10][0]).reads(rtu(5, 222));
    assertThat(other.poll(turn)).isEqualTo(millivolts(222));
  }

  @Test
  void anotherUnitDoesNotWaitForAUnitThatIsLate() throws Exception {
    assertThat(exchange(line, 5, 10, Optional.empty(), 0).poll(turn))
        .isEqualTo(new Outcome.NoAnswer());
    long before = turn.nanos();
    turn.reads(rtu(6, 333));
    assertThat(exchange(line, 6, 20, Optional.empty(), 0).poll(turn)).isEqualTo(millivolts(333));
    assertThat(Duration.ofNanos(turn.nanos() - before)).isLessThan(Duration.ofMillis(100));
  }

  @Test
  void aLostWireIsGone() throws Exception {
    turn.isGone();
    assertThat(both.poll(turn)).isEqualTo(new Outcome.WireGone());
  }

  @Test
  void aConnectionOverWhichNothingComesTwiceIsMadeAnew() throws Exception {
    Conversation connection = Conversation.tcp();
    ModbusExchange probe = exchange(connection, 1, 10, Optional.empty(), 1);
    assertThat(probe.poll(turn)).isEqualTo(new Outcome.Stale());
    assertThat(turn.sent).hasSize(2);
    assertThat(probe.poll(turn)).isEqualTo(new Outcome.NoAnswer());
    turn.reads(TcpFraming.frame(4, 1, pdu(184)));
    assertThat(probe.poll(turn)).isEqualTo(millivolts(184));
    turn.reads(TcpFraming.frame(4, 1, pdu(185)), TcpFraming.frame(5, 1, pdu(186)));
    assertThat(probe.poll(turn)).isEqualTo(millivolts(186));
  }

  @Test
  void aNumberThatCannotBeBelievedIsRejected() throws Exception {
    turn.reads(rtu(5, 30_000, 0, 21));
    assertThat(both.poll(turn))
        .isEqualTo(
            new Outcome.Rejected(
                "30000 mV is outside -10000 to 10000 mV",
                "Compare register, as, words, bytes and scale with the device's list"));
  }

  @Test
  void settingsThatCannotBeAreRefused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> exchange(line, 0, 1, Optional.empty(), 0))
        .withMessage("a unit is 1 to 255, not 0");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> exchange(line, 1, 1, Optional.empty(), -1))
        .withMessage("no -1 retries");
  }
}
