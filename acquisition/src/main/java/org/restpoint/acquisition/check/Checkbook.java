package org.restpoint.acquisition.check;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.restpoint.acquisition.check.Span.Opened;
import org.restpoint.acquisition.event.CheckRole;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.event.Result.Verification;
import org.restpoint.config.station.Calibrate.Every;
import org.restpoint.stability.calibration.Reason;

/**
 * A probe's book of checks: which are due, and which samples no check vouches for yet. A check that
 * passes closes the span of its role; one that fails doubts all of it; one that is uncertain
 * changes nothing, so that it stays due.
 */
public final class Checkbook {

  /** So many results can be doubted at once: days of work at the bench; bounds the memory. */
  public static final int MOST_RESULTS = 500;

  /** More check standards than a bench has; bounds the memory. */
  private static final int MOST_CHARTS = 16;

  private final CheckPlan plan;
  private final List<String> ids = new ArrayList<>();
  private final Map<CheckRole, Span> spans = new EnumMap<>(CheckRole.class);
  private final Map<String, RecoveryChart> charts = new LinkedHashMap<>();

  /** A book that goes on from what is remembered. */
  public Checkbook(CheckPlan plan, Optional<CheckMemory> memory) {
    this.plan = plan;
    forget();
    memory.ifPresent(
        kept -> {
          ids.addAll(kept.ids());
          kept.spans().forEach(span -> spans.put(span.role(), span));
          kept.charts().forEach(chart -> charts.put(chart.standard(), chart));
        });
  }

  /** All it needs to go on. */
  public CheckMemory memory() {
    return new CheckMemory(ids, List.copyOf(spans.values()), List.copyOf(charts.values()));
  }

  /** Another electrode: what was checked before says nothing of it. */
  public void forget() {
    ids.clear();
    charts.clear();
    for (CheckRole role : CheckRole.values()) {
      spans.put(role, Span.begin(role));
    }
  }

  /** Results that are not kept any more: no check can doubt them. */
  public void forget(Collection<String> results) {
    ids.removeAll(results);
  }

  /** What the result of a sample must carry a flag for. */
  public List<String> flags(Instant time) {
    List<String> flags = new ArrayList<>();
    if (failed().isPresent()) {
      flags.add("check-failed");
    }
    if (due(time).isPresent()) {
      flags.add("check-due");
    }
    return flags;
  }

  /** The first role whose last check failed and has not been made good. */
  public Optional<CheckRole> failed() {
    return spans.values().stream().filter(Span::isFailed).map(Span::role).findFirst();
  }

  /** The first role whose check is due. */
  public Optional<CheckRole> due(Instant time) {
    return spans.values().stream().filter(span -> isDue(span, time)).map(Span::role).findFirst();
  }

  private boolean isDue(Span span, Instant time) {
    Every every = plan.every().getOrDefault(span.role(), new Every.Never());
    if (every instanceof Every.Never || span.isFailed()) {
      return false;
    }
    if (span.opened() == Opened.RECALIBRATED) {
      return true;
    }
    if (every instanceof Every.Samples often) {
      return span.samples() >= often.samples();
    }
    Every.Span often = (Every.Span) every;
    return span.since().isPresent()
        && (span.since().get().plus(often.span()).isBefore(time)
            || span.since().get().isAfter(time));
  }

  /** A sample was measured. */
  public void sample(String id) {
    ids.add(id);
    spans.replaceAll((role, span) -> span.withSample());
    trim();
  }

  /**
   * A calibration was accepted.
   *
   * @param slopeMeasured whether its slope is of its own standards
   */
  public void calibrated(Instant time, boolean slopeMeasured) {
    spans.replaceAll((role, span) -> span.calibrated(time, slopeMeasured));
    trim();
  }

  private void trim() {
    int needed = spans.values().stream().mapToInt(Span::samples).max().orElse(0);
    int kept = Math.min(MOST_RESULTS, needed);
    if (ids.size() > kept) {
      ids.subList(0, ids.size() - kept).clear();
    }
  }

  /**
   * What a check means.
   *
   * @param failure which results it doubts, where it failed
   * @param drifting what its control chart says, where that is new
   */
  public record Consequence(Optional<CheckFailure> failure, Optional<Reason> drifting) {}

  /** Takes the result of a check; one that was not judged means nothing. */
  public Consequence checked(Result result) {
    if (result.verification().isEmpty()) {
      return new Consequence(Optional.empty(), Optional.empty());
    }
    Verification check = result.verification().get();
    Optional<CheckFailure> failure = Optional.empty();
    boolean failed = check.verdict().equals("failed");
    if (failed) {
      Span span = span(check.role());
      int known = Math.min(span.samples(), ids.size());
      List<String> doubted = List.copyOf(ids.subList(ids.size() - known, ids.size()));
      failure =
          Optional.of(
              new CheckFailure(check, result.time(), span, doubted, span.samples() - known));
    }
    if (failed || check.verdict().equals("passed")) {
      spans.put(check.role(), span(check.role()).checked(result.time(), !failed));
      trim();
    }
    return new Consequence(failure, failed ? Optional.empty() : charted(check));
  }

  private Span span(CheckRole role) {
    return spans.getOrDefault(role, Span.begin(role));
  }

  private Optional<Reason> charted(Verification check) {
    if (check.role() != CheckRole.CHECK_STANDARD || check.recoveryPercent().isEmpty()) {
      return Optional.empty();
    }
    String standard = check.standard().orElseThrow();
    RecoveryChart chart = charts.getOrDefault(standard, RecoveryChart.begin(standard));
    if (charts.size() >= MOST_CHARTS && !charts.containsKey(standard)) {
      charts.remove(charts.keySet().iterator().next());
    }
    RecoveryChart.Step step = chart.accept(check.recoveryPercent().getAsDouble());
    charts.put(standard, step.chart());
    return step.news();
  }
}
