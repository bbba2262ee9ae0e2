package org.restpoint.acquisition.probe;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.event.Result.Amount;
import org.restpoint.acquisition.event.Result.CalibrationUsed;
import org.restpoint.acquisition.probe.ProbeMemory.InForce;
import org.restpoint.stability.calibration.Bracket;
import org.restpoint.stability.calibration.ResponseCurve;
import org.restpoint.stability.calibration.RestedSample;

/**
 * Samples between two readings of the standard. Each is published at once on the calibration before
 * it, with a flag; when the next calibration on the same slope is accepted, it is worked out again
 * with the offset of its own time between the two.
 */
final class Brackets {

  /** The flag of a result whose bracket is still open. */
  static final String OPEN = "bracket-open";

  /** As many as a full day of samples with a standard at its ends only. */
  private static final int MOST = 500;

  private final ProbeSettings settings;
  private final Voice voice;
  private final Preparations preparations;
  private final List<Open> open;

  Brackets(ProbeSettings settings, Archive archive, Voice voice, ProbeMemory memory) {
    this.settings = settings;
    this.voice = voice;
    this.preparations = new Preparations(settings, archive);
    this.open = new ArrayList<>(memory.brackets().orElse(List.of()));
  }

  /**
   * A result whose bracket is open.
   *
   * @param id its id
   * @param standardUncertaintyKelvin of its temperature, K, k = 1
   */
  record Open(String id, double standardUncertaintyKelvin) {}

  /** What it keeps over a restart. */
  List<Open> open() {
    return List.copyOf(open);
  }

  /**
   * Nothing ends the brackets that are open: another electrode, or a standard that moved farther
   * than one may, of which nobody knows when it did.
   */
  void endNone() {
    open.clear();
  }

  /** Results that are not kept any more. */
  void forget(Collection<String> results) {
    open.removeIf(each -> results.contains(each.id()));
  }

  /** Whether a result of this attempt is to be worked out again. */
  static boolean isOpenedBy(ProbeSettings settings, Attempt attempt) {
    return settings.calibrate().bracket()
        && attempt.purpose() instanceof Purpose.OfSample
        && !attempt.isConfidential();
  }

  /** A sample was read; one too many leaves the oldest as it is. */
  void read(Attempt attempt, Result result) {
    if (isOpenedBy(settings, attempt)
        && result.concentration().isPresent()
        && attempt.temperature() instanceof Temperature.Known known) {
      open.add(new Open(result.id(), known.standardUncertaintyKelvin()));
      if (open.size() > MOST) {
        open.remove(0);
      }
    }
  }

  /** A calibration was accepted: the brackets that it can end are ended. */
  void calibrated(Instant time, Optional<InForce> before, InForce after) {
    if (before.isPresent() && Bracket.isPossible(before.get().curve(), after.curve())) {
      String because = "calibration %s ends its bracket".formatted(after.id());
      for (Open each : open) {
        voice.revise(
            time, each.id(), because, published -> between(published, before.get(), after, each));
      }
    }
    open.clear();
  }

  private Result between(Result published, InForce before, InForce after, Open each) {
    boolean rests =
        published.calibration().map(CalibrationUsed::id).equals(Optional.of(before.id()));
    Duration whole = Duration.between(before.since(), after.since());
    Duration gone = Duration.between(before.since(), published.time());
    if (!rests || gone.isNegative() || gone.compareTo(whole) > 0 || whole.isZero()) {
      return published;
    }
    double share = gone.toMillis() / (double) whole.toMillis();
    ResponseCurve curve = new Bracket(before.curve(), after.curve(), share).curve();
    RestedSample sample =
        settings
            .matrix()
            .of(
                RestedSample.of(
                    published.millivolts().orElseThrow(),
                    published.millivoltsUncertainty().orElseThrow(),
                    published.celsius().orElseThrow(),
                    each.standardUncertaintyKelvin()));
    return settings
        .amounts()
        .of(curve, sample)
        .map(told -> told(published.withoutFlag(OPEN), told, curve, sample, after))
        .orElse(published);
  }

  private Result told(
      Result closed, Amounts.Told told, ResponseCurve curve, RestedSample sample, InForce after) {
    Amount amount = told.amount();
    Result worked =
        closed
            .change()
            .calibration(used(closed.calibration().orElseThrow(), curve, after))
            .concentration(
                amount,
                ResultMaker.lines(told.budget(), closed.forecast()),
                settings.matrix().interference(settings.scale(), amount, sample))
            .done();
    return preparations.anew(
        ranged(worked, amount), Retelling.asked(closed), closed.sample(), amount);
  }

  private static Result ranged(Result result, Amount amount) {
    Result free = result.withoutFlag("below-range").withoutFlag("above-range");
    return switch (amount.relation()) {
      case "<" -> free.withFlag("below-range");
      case ">" -> free.withFlag("above-range");
      default -> free;
    };
  }

  private static CalibrationUsed used(CalibrationUsed before, ResponseCurve curve, InForce after) {
    return new CalibrationUsed(
        before.id(),
        before.slopeMillivoltsPerDecade(),
        before.slopePercent(),
        curve.offsetMillivolts(),
        before.referenceCelsius(),
        before.residualMillivolts(),
        before.ageSeconds(),
        Optional.of(after.id()));
  }
}
