package org.restpoint.acquisition.station;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.restpoint.acquisition.batch.Batch;
import org.restpoint.acquisition.batch.Stage;
import org.restpoint.acquisition.batch.Step;
import org.restpoint.acquisition.batch.Words;
import org.restpoint.acquisition.event.Answer;
import org.restpoint.acquisition.event.Answer.Verdict;
import org.restpoint.acquisition.event.Event;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.event.State;
import org.restpoint.acquisition.instruction.Cup;
import org.restpoint.acquisition.probe.Output;
import org.restpoint.stability.calibration.Reason;

/**
 * Says what a probe's routine says, as of the present cup: its states bear the cup and what comes
 * next in the batch, its answers to the reading of a cup are answers to {@code in-place} and tell
 * the batch how it ended.
 */
final class BatchVoice implements Output {

  private final boolean movesByItself;
  private final Output output;
  private final LastWord lastWord = new LastWord();
  private Optional<Batch> batch;
  private boolean awaited;
  private Optional<Ended> ended = Optional.empty();
  private Optional<State> own = Optional.empty();
  private Optional<State> told = Optional.empty();
  private Optional<Reason> withdrawn = Optional.empty();

  /**
   * A voice for a routine that goes on.
   *
   * @param movesByItself whether a cup that was read is followed by the next without a word
   * @param batch the batch that was underway
   */
  BatchVoice(boolean movesByItself, Optional<Batch> batch, Output output) {
    this.movesByItself = movesByItself;
    this.batch = batch.map(Batch::afterRestart);
    this.output = output;
  }

  /**
   * The reading of a cup that has ended.
   *
   * @param time when
   * @param atRest whether it ended with the potential at rest
   */
  record Ended(Instant time, boolean atRest) {}

  Optional<Batch> batch() {
    return batch;
  }

  Optional<Cup> present() {
    return batch.flatMap(Batch::present);
  }

  boolean is(Stage stage) {
    return batch.filter(now -> now.stage() == stage).isPresent();
  }

  /** Whether the electrode is about to move on from a cup that was read, as nobody has to say. */
  boolean isAwaited() {
    return awaited;
  }

  /** It is not known where the electrode is. */
  void awaitNoMore() {
    awaited = false;
  }

  /** The batch from now on; none once it has ended. */
  void follow(Optional<Batch> now) {
    boolean wasRead = is(Stage.READING);
    boolean onwards = movesByItself && now.filter(b -> b.stage() == Stage.BETWEEN).isPresent();
    batch =
        onwards && now.orElseThrow().next(false) instanceof Step.Taken taken
            ? Optional.of(taken.batch())
            : now;
    awaited = wasRead && onwards && is(Stage.MOVING);
  }

  /**
   * Nothing may be told of a sample any more.
   *
   * @return whether a list of cups told of it
   */
  boolean forget(String sampleNumber) {
    lastWord.forget();
    Optional<Batch> before = batch;
    batch = batch.map(now -> now.forgetting(sampleNumber));
    return !batch.equals(before);
  }

  /** The reading that has ended since this was asked last. */
  Optional<Ended> takeEnded() {
    Optional<Ended> taken = ended;
    ended = Optional.empty();
    return taken;
  }

  /** Has a reading cancelled by {@code cancel}, and said to be given up for this reason. */
  void withdraw(Reason why, Runnable cancel) {
    withdrawn = Optional.of(why);
    cancel.run();
    withdrawn = Optional.empty();
  }

  @Override
  public void event(Event event) {
    if (event instanceof State state) {
      own = Optional.of(state);
      tell(dressed(state, state.time()));
    } else {
      output.event(event);
    }
  }

  /** Tells the state where it is another than was told last. */
  void tellState(Instant time) {
    own.map(state -> dressed(state, time))
        .filter(now -> told.filter(before -> isAlike(before, now)).isEmpty())
        .ifPresent(this::tell);
  }

  private void tell(State state) {
    told = Optional.of(state);
    output.event(state);
  }

  private static boolean isAlike(State a, State b) {
    return a.state().equals(b.state())
        && a.nextStep().equals(b.nextStep())
        && a.cup().equals(b.cup());
  }

  private State dressed(State state, Instant time) {
    boolean ownStep = is(Stage.READING) || state.state().equals("soaking");
    return new State(
        state.station(),
        state.probe(),
        time,
        state.state(),
        state.until(),
        state.outSince(),
        batch.filter(now -> !ownStep).map(this::nextStep).orElse(state.nextStep()),
        present().map(Cup::name));
  }

  private String nextStep(Batch now) {
    return Words.nextStep(now) + (awaited ? " - or let it be seen there" : "");
  }

  @Override
  public void answer(Answer answer) {
    if (isOfCup(answer)) {
      ofCup(withdrawn.map(why -> ofCup(answer, List.of(why))).orElse(answer));
    } else if (withdrawn.isEmpty()) {
      output.answer(answer);
    }
  }

  @Override
  public void confide(Answer answer) {
    output.confide(answer);
  }

  private boolean isOfCup(Answer answer) {
    return is(Stage.READING)
        && present()
            .flatMap(Cup::reading)
            .filter(task -> task.word().equals(answer.instruction()))
            .isPresent();
  }

  private void ofCup(Answer answer) {
    Answer of = ofCup(answer, answer.reasons());
    if (isGivenUp(answer)) {
      follow(batch.map(Batch::givenUp));
    } else if (answer.verdict() != Verdict.ACCEPTED) {
      ended = Optional.of(new Ended(answer.time(), isAtRest(answer)));
      follow(batch.map(now -> now.ended(answer)));
    }
    say(of);
  }

  private Answer ofCup(Answer answer, List<Reason> reasons) {
    return new Answer(
        answer.id(),
        answer.station(),
        answer.probe(),
        answer.time(),
        "in-place",
        answer.verdict(),
        reasons,
        answer.outcome(),
        present().map(Cup::line));
  }

  private boolean isGivenUp(Answer answer) {
    return withdrawn.isPresent()
        || answer.reasons().stream().anyMatch(reason -> reason.code().equals("cancelled"));
  }

  private static boolean isAtRest(Answer answer) {
    return answer
        .outcome()
        .filter(event -> !(event instanceof Result result) || result.millivolts().isPresent())
        .isPresent();
  }

  /** Answers a word of the batch. */
  void say(Answer answer) {
    lastWord.heard(answer);
    output.answer(answer);
  }

  LastWord lastWord() {
    return lastWord;
  }

  /** Says an answer once more. */
  void repeat(Answer answer) {
    output.answer(answer);
  }
}
