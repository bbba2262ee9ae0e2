package org.restpoint.acquisition.batch;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.restpoint.acquisition.event.Answer;
import org.restpoint.acquisition.event.BatchSummary;
import org.restpoint.acquisition.instruction.Cup;
import org.restpoint.acquisition.instruction.Instruction;

/**
 * A batch on its way: which cup is the present one, and what came of those before it. It never
 * changes; each word gives the batch after it, or says why not. Its JSON form is what a station
 * keeps of it over a restart.
 *
 * @param begun when its list was given
 * @param cups the list
 * @param at the place of the present cup; -1 before the first, the number of cups after the last
 * @param stage how far it is with the present cup
 * @param outcomes what came of the cups up to the present one, in their order
 */
public record Batch(
    Instant begun, List<Cup> cups, int at, Stage stage, List<BatchSummary.Cup> outcomes) {

  public Batch {
    cups = List.copyOf(cups);
    outcomes = List.copyOf(outcomes);
    if (at < -1 || at > cups.size()) {
      throw new IllegalArgumentException("there is no cup at " + at);
    }
  }

  /** A batch before its first cup. */
  public static Batch of(Instant begun, List<Cup> cups) {
    return new Batch(begun, cups, -1, Stage.BETWEEN, List.of());
  }

  /** The present cup; empty before the first and after the last. */
  public Optional<Cup> present() {
    return at >= 0 && at < cups.size() ? Optional.of(cups.get(at)) : Optional.empty();
  }

  /** What has come of the present cup so far. */
  public Optional<BatchSummary.Cup> outcome() {
    return at >= 0 && at < outcomes.size() ? Optional.of(outcomes.get(at)) : Optional.empty();
  }

  /** Whether the present cup had its turn and gave nothing, so that it may be read again. */
  boolean mayBeReadAgain() {
    return outcome()
        .filter(
            seen ->
                seen.outcome() == BatchSummary.Outcome.UNSETTLED
                    || seen.outcome() == BatchSummary.Outcome.REFUSED)
        .isPresent();
  }

  /**
   * Ready to move on.
   *
   * @param skip whether to go on although the present cup is not read
   */
  public Step next(boolean skip) {
    return switch (stage) {
      case READING -> new Step.Refused(Order.busy(present().orElseThrow()));
      case MOVING, STANDARD_REFUSED ->
          skip
              ? new Step.Taken(noted(BatchSummary.Cup::passedOver).onwards())
              : new Step.Refused(Order.notRead(present().orElseThrow(), stage));
      case BETWEEN, THROUGH -> new Step.Taken(onwards());
    };
  }

  private Batch onwards() {
    int then = Math.min(at + 1, cups.size());
    return new Batch(
        begun, cups, then, then == cups.size() ? Stage.THROUGH : Stage.MOVING, outcomes);
  }

  /**
   * The electrode is in the present cup, and its reading begins.
   *
   * @param name the cup that is meant, where that was said
   */
  public Step inPlace(Optional<String> name) {
    if (stage == Stage.THROUGH) {
      return new Step.Refused(Order.through());
    }
    if (stage == Stage.READING) {
      return new Step.Refused(Order.busy(present().orElseThrow()));
    }
    if (stage == Stage.BETWEEN && !mayBeReadAgain()) {
      return new Step.Refused(Order.nextExpected(present()));
    }
    Cup cup = present().orElseThrow();
    if (name.isPresent() && !name.get().equals(cup.name())) {
      return new Step.Refused(Order.otherCup(name.get(), cup));
    }
    return new Step.Taken(in(Stage.READING));
  }

  /** Its end, early or not. */
  public Step done() {
    return stage == Stage.READING
        ? new Step.Refused(Order.busy(present().orElseThrow()))
        : new Step.Taken(this);
  }

  /** A cup to rinse in has had its turn. */
  public Batch rinsed() {
    return noted(Outcomes::rinsed).in(Stage.BETWEEN);
  }

  /** The reading of the present cup was given up: the cup can be read again. */
  public Batch givenUp() {
    return in(Stage.MOVING);
  }

  /** After a restart: a reading that was cut short is to be begun again. */
  public Batch afterRestart() {
    return stage == Stage.READING ? givenUp() : this;
  }

  /** The same with cups to rinse in where there were cups of a sample, read or not. */
  public Batch forgetting(String sampleNumber) {
    List<Cup> others = new ArrayList<>(cups);
    List<BatchSummary.Cup> seen = new ArrayList<>(outcomes);
    for (int place = 0; place < cups.size(); place++) {
      if (Cup.isOf(cups.get(place).line(), sampleNumber)) {
        Cup emptied = Cup.of(Cup.emptied(cups.get(place).line(), sampleNumber, place));
        others.set(place, emptied);
        if (place < seen.size()) {
          seen.set(
              place, Outcomes.rinsed(BatchSummary.Cup.unread(emptied.name(), emptied.holds())));
        }
      }
    }
    return new Batch(begun, others, at, stage, seen);
  }

  /** The reading of the present cup has ended with this answer. */
  public Batch ended(Answer answer) {
    Batch after = noted(before -> Outcomes.of(before, answer));
    boolean standardRefused =
        isStandard() && after.outcome().orElseThrow().outcome() == BatchSummary.Outcome.REFUSED;
    return after.in(standardRefused ? Stage.STANDARD_REFUSED : Stage.BETWEEN);
  }

  private boolean isStandard() {
    return present().flatMap(Cup::reading).orElse(null) instanceof Instruction.Calibrate;
  }

  private Batch in(Stage next) {
    return new Batch(begun, cups, at, next, outcomes);
  }

  private Batch noted(UnaryOperator<BatchSummary.Cup> change) {
    List<BatchSummary.Cup> noted = new ArrayList<>(outcomes);
    Cup cup = present().orElseThrow();
    BatchSummary.Cup before =
        outcome().orElseGet(() -> BatchSummary.Cup.unread(cup.name(), cup.holds()));
    if (noted.size() > at) {
      noted.set(at, change.apply(before));
    } else {
      noted.add(change.apply(before));
    }
    return new Batch(begun, cups, at, stage, noted);
  }
}
