package org.restpoint.acquisition.check;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.control.ControlChart;
import org.restpoint.stability.control.ControlLimits;
import org.restpoint.stability.control.Gathering;
import org.restpoint.stability.control.RunRule;
import org.restpoint.stability.control.Signal;
import org.restpoint.stability.control.Watching;

/**
 * The recoveries of one check standard as a control chart: drawn from the first {@link
 * Gathering#USUAL_BASE}, watched by the rules of Western Electric afterwards. A check that failed
 * stays out: it is told by itself, and limits drawn with it would hide the next one.
 *
 * @param standard the standard's name
 * @param percents the base while it is gathered, afterwards the last recoveries; %, oldest first
 * @param limits the limits, once they are drawn
 * @param drifting whether the newest completed a pattern, or went on with one; told once
 */
public record RecoveryChart(
    String standard, List<Double> percents, Optional<ControlLimits> limits, boolean drifting) {

  public RecoveryChart {
    percents = List.copyOf(percents);
  }

  static RecoveryChart begin(String standard) {
    return new RecoveryChart(standard, List.of(), Optional.empty(), false);
  }

  /**
   * A chart with one more value, and what there is to say.
   *
   * @param chart the chart
   * @param news that there is a pattern, where there was none before
   */
  record Step(RecoveryChart chart, Optional<Reason> news) {}

  Step accept(double percent) {
    ControlChart next = chart().accept(percent);
    List<Double> kept =
        next instanceof Watching watching ? watching.recent() : ((Gathering) next).base();
    String seen = next.signals().stream().map(Signal::text).collect(Collectors.joining("; "));
    return new Step(
        new RecoveryChart(standard, kept, next.limits(), !seen.isEmpty()),
        seen.isEmpty() || drifting ? Optional.empty() : Optional.of(told(seen)));
  }

  private ControlChart chart() {
    return limits
        .<ControlChart>map(
            drawn -> new Watching(drawn, RunRule.WESTERN_ELECTRIC, List.of(), percents, List.of()))
        .orElseGet(() -> new Gathering(Gathering.USUAL_BASE, RunRule.WESTERN_ELECTRIC, percents));
  }

  private Reason told(String seen) {
    return new Reason(
        "check-drifting",
        "recoveries of standard %s (%%) no longer scatter as they did: %s"
            .formatted(standard, seen),
        "No check has failed by it. Likely in order: the check standard or a calibration standard"
            + " ages or was renewed, the membrane ages, the temperature of the room has changed."
            + " Read a fresh portion; renew the standards; look at the slope of the last"
            + " calibrations.");
  }
}
