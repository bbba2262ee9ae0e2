package org.restpoint.acquisition.probe;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.event.Result.Amount;
import org.restpoint.acquisition.event.Result.CalibrationUsed;
import org.restpoint.acquisition.event.Result.Interference;
import org.restpoint.acquisition.event.Result.Outcome;
import org.restpoint.acquisition.event.Result.Verification;
import org.restpoint.acquisition.preparation.Prepared;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.rest.RestProgress;
import org.restpoint.stability.rest.RestingPotential;
import org.restpoint.stability.rest.Settling;
import org.restpoint.stability.uncertainty.BudgetLine;

/** A result while it is put together: without a word it is an unsettled one with no number. */
final class ResultDraft {

  private final ProbeSettings settings;
  private final String id;
  private final Instant time;
  private final long readings;
  private final double elapsedSeconds;
  private final Optional<ObjectNode> sample;
  private Outcome outcome = Outcome.UNSETTLED;
  private Optional<RestingPotential> rest = Optional.empty();
  private Optional<RestProgress> seen = Optional.empty();
  private OptionalLong responseReadings = OptionalLong.empty();
  private OptionalDouble celsius = OptionalDouble.empty();
  private Optional<CalibrationUsed> calibration = Optional.empty();
  private Optional<Amount> amount = Optional.empty();
  private Optional<List<BudgetLine>> budget = Optional.empty();
  private Optional<List<Interference>> interference = Optional.empty();
  private Optional<Verification> verification = Optional.empty();
  private Optional<Prepared> prepared = Optional.empty();
  private int quality;
  private List<String> flags = List.of();
  private List<Reason> reasons = List.of();

  ResultDraft(
      ProbeSettings settings,
      String id,
      Instant time,
      long readings,
      double elapsedSeconds,
      Optional<ObjectNode> sample) {
    this.settings = settings;
    this.id = id;
    this.time = time;
    this.readings = readings;
    this.elapsedSeconds = elapsedSeconds;
    this.sample = sample;
  }

  /** Takes over what the attempt saw. */
  ResultDraft read(Attempt attempt) {
    responseReadings = attempt.responseReadings();
    Settling settling = attempt.settling();
    if (settling.taken() > 0) {
      seen = Optional.of(settling.progress());
    }
    if (settling.stage() == Settling.Stage.AT_REST) {
      rest = Optional.of(settling.potential());
    }
    if (attempt.temperature() instanceof Temperature.Known known) {
      celsius = OptionalDouble.of(known.celsius());
    }
    return this;
  }

  ResultDraft outcome(Outcome how) {
    outcome = how;
    return this;
  }

  ResultDraft calibration(CalibrationUsed used) {
    calibration = Optional.of(used);
    return this;
  }

  ResultDraft amount(Amount found, List<BudgetLine> sources, List<Interference> others) {
    amount = Optional.of(found);
    budget = Optional.of(sources);
    interference = others.isEmpty() ? Optional.empty() : Optional.of(others);
    return this;
  }

  ResultDraft verification(Optional<Verification> check) {
    verification = check;
    return this;
  }

  ResultDraft prepared(Optional<Prepared> asked) {
    prepared = asked;
    return this;
  }

  ResultDraft judged(int flag, List<String> codes, List<Reason> why) {
    quality = flag;
    flags = List.copyOf(codes);
    reasons = List.copyOf(why);
    return this;
  }

  Result build() {
    return new Result(
        id,
        1,
        settings.station(),
        settings.probe(),
        time,
        outcome,
        number(rest.map(RestingPotential::millivolts)),
        number(rest.map(RestingPotential::standardUncertaintyMillivolts)),
        celsius,
        readings,
        elapsedSeconds,
        settings.rule().describe(),
        rest.map(RestingPotential::forecast).orElse(false),
        responseReadings,
        rest.isPresent()
            ? OptionalDouble.empty()
            : number(seen.map(RestProgress::latestMillivolts)),
        number(seen.map(RestProgress::spreadMillivolts)),
        seen.map(RestProgress::driftMillivoltsPerMinute).orElse(OptionalDouble.empty()),
        seen.map(RestProgress::driftStandardErrorMillivoltsPerMinute)
            .orElse(OptionalDouble.empty()),
        calibration,
        amount,
        prepared.map(Prepared::reported).or(() -> amount.map(ResultMaker::reported)),
        budget,
        interference,
        verification,
        prepared.map(Prepared::preparation),
        sample,
        quality,
        flags,
        reasons,
        Optional.empty(),
        Optional.empty(),
        Result.CAUTION);
  }

  private static OptionalDouble number(Optional<Double> value) {
    return value.map(OptionalDouble::of).orElseGet(OptionalDouble::empty);
  }
}
