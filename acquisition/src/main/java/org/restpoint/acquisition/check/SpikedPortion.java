package org.restpoint.acquisition.check;

import org.restpoint.acquisition.check.CheckPlan.SpikeTerms;
import org.restpoint.acquisition.event.CheckRole;
import org.restpoint.acquisition.event.Result.Amount;
import org.restpoint.stability.quality.Measured;
import org.restpoint.stability.quality.Recovery;
import org.restpoint.stability.quality.Spike;
import org.restpoint.stability.quality.SpikeReadings;
import org.restpoint.stability.quality.Verdict;

/** Judges a spike: another portion of a sample, with a known amount added. */
public final class SpikedPortion {

  private SpikedPortion() {}

  /** A spike; of one that is beyond the range nothing can be said. */
  public static CheckFinding judge(SpikeTerms terms, Portion portion) {
    Amount before = portion.before();
    if (before.relation().equals(">") || !portion.amount().relation().equals("=")) {
      return portion.notJudged(CheckRole.SPIKE, Portion.beyondTheRange());
    }
    SpikeReadings readings =
        new SpikeReadings(
            before.relation().equals("<") ? Measured.exactly(0) : Portion.measured(before),
            Portion.measured(portion.amount()),
            Measured.exactly(terms.intoMillilitres()),
            new Measured(
                terms.concentration(), terms.concentration() * terms.relativeUncertainty()),
            Measured.exactly(terms.addsMillilitres()));
    Recovery recovery = new Spike(terms.limits(), Spike.LEAST_PERCENT_OF_SAMPLE).judge(readings);
    if (recovery.verdict() == Verdict.NOT_JUDGED) {
      return portion.notJudged(CheckRole.SPIKE, recovery.reason().orElseThrow());
    }
    double mixture = terms.intoMillilitres() + terms.addsMillilitres();
    double expected =
        readings.unspiked().value() * terms.intoMillilitres() / mixture + readings.added();
    return portion.ofSpike(expected, recovery);
  }
}
