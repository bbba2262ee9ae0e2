package org.restpoint.acquisition.demo;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.restpoint.acquisition.event.Answer;
import org.restpoint.acquisition.event.Calibration;
import org.restpoint.acquisition.event.Event;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.event.State;
import org.restpoint.adapters.mqtt.BrokerException;

/**
 * Who works at the simulated bench: moves the electrode, gives the instruction, waits for its end,
 * and notes where something came out otherwise than expected.
 */
final class Technician {

  /** Rinse water is never quite free of nitrate: an invented, usual figure. */
  private static final Solution RINSE = new Solution("rinse water", 0.1, 22.0);

  private static final Duration RINSING = Duration.ofSeconds(15);

  private final Bench bench;
  private final Dialogue dialogue;
  private final Account account;
  private final List<String> surprises = new ArrayList<>();

  Technician(Bench bench, Dialogue dialogue, Account account) {
    this.bench = bench;
    this.dialogue = dialogue;
    this.account = account;
  }

  /** What came out otherwise than expected; empty when nothing did. */
  List<String> surprises() {
    return List.copyOf(surprises);
  }

  /** Begins the account: soaks the electrode until the station says that it is over. */
  void soak(Solution solution, String told, int minutes)
      throws BrokerException, InterruptedException {
    Instant begun = bench.put(solution);
    account.beginAt(begun);
    account.at(begun, told);
    ask(instruction("soak").put("minutes", minutes));
    State soaking = dialogue.state(state -> state.state().equals("soaking"));
    account.at(soaking.time(), soaking.nextStep());
    next(dialogue.state(state -> !state.state().equals("soaking")));
  }

  /** Reads a standard and expects a verdict. */
  void calibrate(String standard, Solution solution, String told, Calibration.Verdict expected)
      throws BrokerException, InterruptedException {
    move(solution, told);
    Event outcome = outcome(ask(instruction("calibrate").put("standard", standard)));
    nextState();
    if (!(outcome instanceof Calibration calibration) || calibration.verdict() != expected) {
      surprises.add(
          "standard %s was expected to be %s".formatted(standard, Sentences.word(expected)));
    }
  }

  /** Reads a sample and expects a number with these flags that covers the truth. */
  Finding measure(
      String what, Solution solution, String told, ObjectNode sample, List<String> flags)
      throws BrokerException, InterruptedException {
    move(solution, told);
    Answer answer = ask(instruction("measure").set("sample", sample));
    nextState();
    return good(new Finding(what, result(answer), solution.milligramsPerLitre()), flags);
  }

  /** Tries to read a sample where no number may be given. */
  Finding measureInVain(
      String what, Solution solution, String told, ObjectNode sample, String expected)
      throws BrokerException, InterruptedException {
    move(solution, told);
    Result result = result(ask(instruction("measure").set("sample", sample)));
    if (result.outcome() != Result.Outcome.REFUSED || !result.flags().contains(expected)) {
      surprises.add("%s was expected to be refused: %s".formatted(what, expected));
    }
    return new Finding(what, result, solution.milligramsPerLitre());
  }

  /** Reads a standard to check the calibration. */
  Finding verify(String what, Solution solution, String told, String standard)
      throws BrokerException, InterruptedException {
    move(solution, told);
    Answer answer = ask(instruction("verify").put("standard", standard));
    nextState();
    return good(new Finding(what, result(answer), solution.milligramsPerLitre()), List.of());
  }

  private Finding good(Finding finding, List<String> flags) {
    if (finding.result().outcome() != Result.Outcome.SETTLED
        || !finding.result().flags().equals(flags)) {
      surprises.add(
          "%s was expected to settle with %s"
              .formatted(finding.what(), flags.isEmpty() ? "no flag" : "the flag " + flags.get(0)));
    } else if (!finding.holds()) {
      surprises.add(
          "%s was found as %s mg/L, and it really holds %s"
              .formatted(finding.what(), finding.found(), finding.really()));
    }
    return finding;
  }

  private void move(Solution solution, String told) throws InterruptedException {
    Instant rinsed = bench.put(RINSE).plus(RINSING);
    dialogue.until(rinsed);
    account.gap();
    account.at(bench.put(solution), "Rinsed and blotted. " + told);
  }

  private Answer ask(ObjectNode instruction) throws BrokerException, InterruptedException {
    account.below("> " + shown(instruction));
    return dialogue.ask(instruction);
  }

  /** As it is sent, but for spaces between the fields, where a line may be broken. */
  private static String shown(ObjectNode instruction) {
    return EventJson.write(instruction).replace(' ', Account.NO_BREAK).replace(",\"", ", \"");
  }

  private static ObjectNode instruction(String word) {
    return EventJson.mapper().createObjectNode().put("do", word);
  }

  private static Event outcome(Answer answer) {
    return answer
        .outcome()
        .orElseThrow(
            () ->
                DemoException.brokenOff(
                    "%s was %s without an outcome"
                        .formatted(answer.instruction(), Sentences.word(answer.verdict()))));
  }

  private static Result result(Answer answer) {
    if (outcome(answer) instanceof Result result) {
      return result;
    }
    throw DemoException.brokenOff("%s gave no result".formatted(answer.instruction()));
  }

  private void nextState() throws InterruptedException {
    next(dialogue.state(state -> true));
  }

  private void next(State state) {
    account.at(state.time(), "Next: " + state.nextStep());
  }
}
