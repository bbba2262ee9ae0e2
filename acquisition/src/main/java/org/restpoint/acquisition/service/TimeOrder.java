package org.restpoint.acquisition.service;

import java.time.Instant;
import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.restpoint.config.station.Electrode;
import org.restpoint.config.station.Probe;
import org.restpoint.config.station.Station;
import org.restpoint.config.station.TemperatureSource;

/**
 * The times under which the engine takes things in. They are those of the readings and of the
 * clock, except that they never go back: not when the clock is put back, not behind time that has
 * passed for the routines already, and not among probes of which one lends another its temperature.
 * A reading after an instruction is at least a millisecond later.
 *
 * <p>So the order of the times is the order in which things were taken, and a replay, which has
 * nothing but the times, takes them in the same order. Used by the engine's thread alone.
 */
final class TimeOrder {

  /** Probes that share an order, and the earliest time that the next of them may have. */
  private static final class Company {
    private Instant earliest = Instant.MIN;
  }

  private final Map<String, Company> companies = new HashMap<>();
  private Instant passed = Instant.MIN;

  TimeOrder(Station station) {
    station.probes().keySet().forEach(probe -> companies.put(probe, new Company()));
    for (Probe probe : station.probes().values()) {
      if (probe.electrode().map(Electrode::temperature).orElse(null)
          instanceof TemperatureSource.FromProbe lender) {
        unite(probe.name(), lender.probe());
      }
    }
  }

  private void unite(String borrower, String lender) {
    Company shared = new Company();
    @Nullable Company one = companies.get(borrower);
    @Nullable Company other = companies.get(lender);
    companies.replaceAll((probe, company) -> company == one || company == other ? shared : company);
  }

  /** The time of a reading. */
  Instant ofReading(String probe, Instant time) {
    return next(probe, time, 0);
  }

  /** The time of an instruction; of a probe that the station does not have, too. */
  Instant ofInstruction(String probe, Instant time) {
    return next(probe, time, 1);
  }

  private Instant next(String probe, Instant time, int millisAfter) {
    Company company = companies.get(probe);
    Instant kept = later(time, passed);
    if (company == null) {
      return kept;
    }
    kept = later(kept, company.earliest);
    company.earliest = kept.plusMillis(millisAfter);
    return kept;
  }

  /** Time has passed for the routines up to here. */
  void passed(Instant time) {
    passed = later(passed, time);
  }

  private static Instant later(Instant one, Instant other) {
    return one.isBefore(other) ? other : one;
  }
}
