package org.restpoint.acquisition.batch;

import java.util.List;
import java.util.Optional;
import org.restpoint.acquisition.event.Answer;
import org.restpoint.acquisition.event.BatchSummary;
import org.restpoint.acquisition.event.BatchSummary.Outcome;
import org.restpoint.acquisition.event.Calibration;
import org.restpoint.acquisition.event.Event;
import org.restpoint.acquisition.event.Result;

/** Reads out of an answer what came of a cup. */
final class Outcomes {

  private Outcomes() {}

  static BatchSummary.Cup rinsed(BatchSummary.Cup before) {
    return new BatchSummary.Cup(
        before.cup(),
        before.holds(),
        Outcome.RINSED,
        false,
        before.tries() + 1,
        Optional.empty(),
        Optional.empty(),
        List.of(),
        List.of());
  }

  static BatchSummary.Cup of(BatchSummary.Cup before, Answer answer) {
    Optional<Event> event = answer.outcome();
    Optional<Result> result = event.filter(Result.class::isInstance).map(Result.class::cast);
    Optional<Calibration> calibration =
        event.filter(Calibration.class::isInstance).map(Calibration.class::cast);
    return new BatchSummary.Cup(
        before.cup(),
        before.holds(),
        result
            .map(Outcomes::outcome)
            .or(() -> calibration.map(Outcomes::outcome))
            .orElse(Outcome.REFUSED),
        false,
        before.tries() + 1,
        result.map(Result::id).or(() -> calibration.map(Calibration::id)),
        result.flatMap(Result::reported),
        result.map(Result::flags).or(() -> calibration.map(Calibration::flags)).orElseGet(List::of),
        result
            .map(Result::reasons)
            .or(() -> calibration.map(Calibration::reasons))
            .orElseGet(answer::reasons));
  }

  private static Outcome outcome(Result result) {
    return switch (result.outcome()) {
      case SETTLED -> Outcome.SETTLED;
      case UNSETTLED -> Outcome.UNSETTLED;
      case REFUSED -> Outcome.REFUSED;
    };
  }

  private static Outcome outcome(Calibration calibration) {
    return calibration.verdict() == Calibration.Verdict.ACCEPTED
        ? Outcome.ACCEPTED
        : Outcome.REFUSED;
  }
}
