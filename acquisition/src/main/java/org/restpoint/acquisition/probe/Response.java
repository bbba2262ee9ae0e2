package org.restpoint.acquisition.probe;

import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.DoubleSupplier;
import org.restpoint.acquisition.event.Calibration;
import org.restpoint.acquisition.event.Event;
import org.restpoint.acquisition.event.Result;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.rest.ForecastRule;
import org.restpoint.stability.rest.forecast.ResponseHistory;
import org.restpoint.stability.rest.forecast.ResponseSeen;

/**
 * How an electrode comes to rest: its rule, and what its finished readings have taught of its
 * response, where the rule is a forecast and learning is on.
 *
 * <p>A reading teaches when it came to rest and gave a settled result or an accepted calibration,
 * whatever it was for. One that was disturbed does not: its response began in the middle. Neither
 * does one that was given up, cancelled or refused: what is doubted is not learnt from.
 */
final class Response {

  private final ProbeSettings settings;
  private final DoubleSupplier slope;
  private ResponseHistory history;

  /**
   * A response that goes on from what was learnt.
   *
   * @param slope the electrode's slope at the time it is asked for, in mV/decade
   * @param learnt what was learnt before
   */
  Response(ProbeSettings settings, DoubleSupplier slope, Optional<ResponseHistory> learnt) {
    this.settings = settings;
    this.slope = slope;
    this.history = learnt.orElseGet(ResponseHistory::empty);
  }

  private boolean learns() {
    return settings.learn() && settings.rule() instanceof ForecastRule;
  }

  /** The rule at the beginning of a reading. */
  Watch watch() {
    return settings.learn() && settings.rule() instanceof ForecastRule forecast
        ? new Watch(
            forecast.detector(slope.getAsDouble(), history.prior()),
            OptionalLong.of(history.readings()))
        : new Watch(settings.rule().detector(slope.getAsDouble()), OptionalLong.empty());
  }

  /** How far a potential may move from where it rested and still be at rest, in mV. */
  double restBandMillivolts() {
    return settings.rule().restBandMillivolts(slope.getAsDouble());
  }

  /** Learns from a reading what it has to teach; says so when the response has changed. */
  Optional<Reason> learn(Attempt ended, Event outcome) {
    Optional<ResponseSeen> seen = isGood(outcome) ? ended.undisturbedResponse() : Optional.empty();
    if (seen.isEmpty()) {
      return Optional.empty();
    }
    ResponseHistory before = history;
    history = history.with(seen.get());
    return history.changes() > before.changes()
        ? Optional.of(changed(before.readings()))
        : Optional.empty();
  }

  private static boolean isGood(Event outcome) {
    return outcome instanceof Result result
        ? result.outcome() == Result.Outcome.SETTLED
        : outcome instanceof Calibration calibration
            && calibration.verdict() == Calibration.Verdict.ACCEPTED;
  }

  private static Reason changed(long readings) {
    return new Reason(
        "response-changed",
        "the electrode comes to rest otherwise than %s taught; they are forgotten and its response is"
                .formatted(
                    readings == 1 ? "the last reading" : "the last %d readings".formatted(readings))
            + " learnt anew",
        "Likely a new membrane, a membrane that is ageing or fouled, or another stirring. After a new"
            + " membrane give: replaced, and read the standards. If nothing was changed, soak or clean"
            + " the membrane and see that the solution is stirred as before.");
  }

  /** Another electrode: nothing is known of it. */
  void forget() {
    history = history.replaced();
  }

  /** What was learnt; empty where nothing is learnt. */
  Optional<ResponseHistory> history() {
    return learns() ? Optional.of(history) : Optional.empty();
  }
}
