package org.restpoint.acquisition.metrics;

import io.micrometer.core.instrument.Counter;
import io.micrometer.core.instrument.DistributionSummary;
import io.micrometer.core.instrument.MeterRegistry;
import org.restpoint.acquisition.event.Result;

/**
 * What is counted of one probe's work. All stand at zero from the first, so a rate can be drawn.
 */
final class ProbeMeters {

  private final Counter settled;
  private final Counter unsettled;
  private final Counter refused;
  private final Counter calibrationsAccepted;
  private final Counter calibrationsRefused;
  private final Counter notices;
  private final Counter losses;
  private final Counter silences;
  private final DistributionSummary settling;

  ProbeMeters(MeterRegistry registry, String probe) {
    settled = counter(registry, probe, "results.settled", "Results at rest, with a concentration");
    unsettled = counter(registry, probe, "results.unsettled", "Readings that never came to rest");
    refused = counter(registry, probe, "results.refused", "Results that may give no number");
    calibrationsAccepted =
        counter(registry, probe, "calibrations.accepted", "Calibrations that came into force");
    calibrationsRefused =
        counter(registry, probe, "calibrations.refused", "Calibrations not to be used");
    notices = counter(registry, probe, "notices", "Notices of what went wrong or needs care");
    losses = counter(registry, probe, "link.losses", "How often what is read was lost");
    silences = counter(registry, probe, "link.silences", "How often nothing came for too long");
    settling =
        DistributionSummary.builder("restpoint.settling")
            .description("Time from the beginning of a reading until it was at rest")
            .baseUnit("seconds")
            .tag(Metrics.PROBE, probe)
            .register(registry);
  }

  void result(Result.Outcome outcome) {
    switch (outcome) {
      case SETTLED -> settled.increment();
      case UNSETTLED -> unsettled.increment();
      case REFUSED -> refused.increment();
    }
  }

  void calibration(boolean accepted) {
    (accepted ? calibrationsAccepted : calibrationsRefused).increment();
  }

  /** A loss is told once by a wire, by the first of the probes that share it. */
  void notice(String code) {
    notices.increment();
    if (code.endsWith("-lost")) {
      losses.increment();
    } else if (code.equals("no-data")) {
      silences.increment();
    }
  }

  void settled(double elapsedSeconds) {
    settling.record(elapsedSeconds);
  }

  private static Counter counter(
      MeterRegistry registry, String probe, String name, String description) {
    return Counter.builder("restpoint." + name)
        .description(description)
        .tag(Metrics.PROBE, probe)
        .register(registry);
  }
}
