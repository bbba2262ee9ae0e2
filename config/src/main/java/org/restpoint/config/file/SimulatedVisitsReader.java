package org.restpoint.config.file;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.restpoint.config.station.Quantity;
import org.restpoint.config.station.Simulation.Visit;

/** Reads what a simulated electrode stands in, one after the other. */
final class SimulatedVisitsReader {

  /** The keys of a visit. */
  static final List<String> KEYS = List.of("solution", "for", "temperature");

  private static final String A_LIST =
      "a list of solutions, e.g. [{ solution: 5 mg/L, for: 10 min }, { solution: 20 mg/L }]";
  private static final String A_VISIT = "a mapping like { solution: 5 mg/L, for: 10 min }";
  private static final String A_SPAN =
      "how long it stays there, as only the last visit is for good";
  private static final Allowed SPAN = Allowed.from(Measure.TIME, "1 ms", "366 d");
  private static final int MOST_VISITS = 100;

  private final SimulatedInterval interval;

  SimulatedVisitsReader(SimulatedInterval interval) {
    this.interval = interval;
  }

  /** The visits, or none where one was refused. */
  List<Visit> read(Entry list) {
    List<Entry> items = list.items(A_LIST);
    if (items.size() > MOST_VISITS) {
      list.refuse("1 to " + MOST_VISITS + " visits", Integer.toString(items.size()));
      return List.of();
    }
    List<Visit> visits = new ArrayList<>();
    for (int i = 0; i < items.size(); i++) {
      boolean last = i == items.size() - 1;
      items.get(i).section(A_VISIT).flatMap(keys -> visit(keys, last)).ifPresent(visits::add);
    }
    return visits.size() == items.size() ? visits : List.of();
  }

  private Optional<Visit> visit(Section keys, boolean last) {
    keys.only(KEYS);
    Optional<Quantity> solution =
        keys.need("solution", "what it stands in: " + Measure.CONCENTRATION.expected())
            .flatMap(SimulatedVisitsReader::solution);
    Optional<Entry> span = last ? keys.find("for") : keys.need("for", A_SPAN);
    Optional<Duration> stay = span.flatMap(value -> interval.orLonger(value, SPAN));
    Optional<Double> celsius = keys.find("temperature").flatMap(Allowed.WATER::number);
    return solution.map(there -> new Visit(there, celsius, stay));
  }

  /** A concentration, or a pH where it is written as one. */
  static Optional<Quantity> solution(Entry entry) {
    return Measure.PH.isUnitOf(entry)
        ? Allowed.PH.number(entry).map(ph -> new Quantity(ph, Quantity.PH))
        : Concentrations.read(entry).map(Concentrations::quantity);
  }

  /** Tells each solution of a probe that is a pH where the analyte is not measured in pH. */
  static void check(Section probe, Measurand measurand) {
    if (!measurand.isConcentration()) {
      return;
    }
    Optional<Entry> simulated = probe.find("link").flatMap(link -> link.inside("simulated"));
    List<Entry> solutions = new ArrayList<>();
    simulated.flatMap(keys -> keys.inside("solution")).ifPresent(solutions::add);
    simulated
        .flatMap(keys -> keys.inside("visits"))
        .ifPresent(
            visits ->
                visits
                    .quietItems()
                    .forEach(visit -> visit.inside("solution").ifPresent(solutions::add)));
    solutions.stream()
        .filter(Measure.PH::isUnitOf)
        .forEach(s -> s.refuse(Measure.CONCENTRATION.expected() + measurand.because()));
  }
}
