package org.restpoint.adapters.modbus;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.restpoint.adapters.bus.Exchange;
import org.restpoint.adapters.bus.Outcome;
import org.restpoint.adapters.bus.Turn;
import org.restpoint.adapters.modbus.Conversation.Reply;
import org.restpoint.adapters.modbus.ReadRequest.Answer;
import org.restpoint.adapters.modbus.Register.Told;
import org.restpoint.adapters.quantity.Parsed;

/**
 * Reads a probe's registers once. A unit that did not answer the time before is asked once only, so
 * that one that is switched off keeps the others waiting as little as can be.
 */
final class ModbusExchange implements Exchange {

  private final Conversation conversation;
  private final ModbusSettings settings;
  private final String wiring;
  private final List<Register> registers;
  private List<ReadRequest> requests;
  private boolean missed;

  /**
   * @param wiring what to look at when answers are garbled, a sentence without a full stop
   */
  ModbusExchange(Conversation conversation, ModbusSettings settings, String wiring) {
    this.conversation = conversation;
    this.settings = settings;
    this.wiring = wiring;
    this.registers =
        Stream.of(settings.potential(), settings.temperature()).flatMap(Optional::stream).toList();
    this.requests = RegisterPlan.together(registers);
  }

  @Override
  public Outcome poll(Turn turn) throws InterruptedException {
    return poll(turn, missed ? 0 : settings.retries());
  }

  private Outcome poll(Turn turn, int retries) throws InterruptedException {
    List<List<Integer>> rows = new ArrayList<>();
    int left = retries;
    while (rows.size() < requests.size()) {
      ReadRequest request = requests.get(rows.size());
      Reply reply = conversation.ask(turn, settings.unit(), request, settings.answerWithin());
      if (reply instanceof Reply.Gone) {
        return new Outcome.WireGone();
      }
      missed = reply instanceof Reply.Nothing;
      if (reply instanceof Reply.Nothing nothing) {
        if (nothing.stale()) {
          return new Outcome.Stale();
        }
        if (left == 0 || turn.isOver()) {
          return new Outcome.NoAnswer();
        }
        left--;
      } else if (reply instanceof Reply.Garbled garbled) {
        return garbled(garbled, left);
      } else if (((Reply.Answered) reply).answer() instanceof Answer.Registers row) {
        rows.add(row.words());
      } else {
        ExceptionCode code = ((Answer.Refused) ((Reply.Answered) reply).answer()).code();
        if (!code.isIllegalDataAddress() || requests.size() == registers.size()) {
          return new Outcome.Rejected(
              "%s (%s)".formatted(code.text(), asked(request)), code.remedy());
        }
        requests = RegisterPlan.apart(registers);
        rows.clear();
      }
    }
    return outcome(rows);
  }

  private Outcome garbled(Reply.Garbled garbled, int left) {
    Outcome.Rejected rejected = new Outcome.Rejected(garbled.account(), wiring);
    return left == 0 ? rejected : new Outcome.Again(rejected, turn -> poll(turn, left - 1));
  }

  private static String asked(ReadRequest request) {
    String table = request.table() == RegisterTable.INPUT ? "input" : "holding";
    return request.count() == 1
        ? "%s register %d".formatted(table, request.address())
        : "%s registers %d to %d"
            .formatted(table, request.address(), request.address() + request.count() - 1);
  }

  private Outcome outcome(List<List<Integer>> rows) {
    List<Double> numbers = new ArrayList<>();
    for (Register register : registers) {
      int row = requests.size() == 1 ? 0 : numbers.size();
      Told told = register.told(rows.get(row), requests.get(row).address());
      if (told instanceof Told.Nothing nothing) {
        return new Outcome.Rejected(
            "register %d: %s".formatted(register.address(), nothing.reason()),
            "Look at the device: it has no value there, or the number is written another way (as, words, bytes)");
      }
      numbers.add(((Told.Value) told).number());
    }
    OptionalDouble potential =
        settings.potential().isPresent()
            ? OptionalDouble.of(numbers.get(0))
            : OptionalDouble.empty();
    OptionalDouble temperature =
        settings.temperature().isPresent()
            ? OptionalDouble.of(numbers.get(numbers.size() - 1))
            : OptionalDouble.empty();
    Parsed parsed = settings.meaning().parsed(potential, temperature);
    return parsed instanceof Parsed.Values values
        ? new Outcome.Values(values)
        : new Outcome.Rejected(
            ((Parsed.Rejected) parsed).reason(),
            "Compare register, as, words, bytes and scale with the device's list");
  }
}
