package org.restpoint.acquisition.probe;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Predicate;
import org.restpoint.acquisition.probe.ProbeMemory.InForce;
import org.restpoint.stability.calibration.ResponseCurve;
import org.restpoint.stability.calibration.StandardPoint;
import org.restpoint.stability.suspicion.Circumstances;
import org.restpoint.stability.suspicion.StandardHistory;

/**
 * What a probe remembers of its standards beside the calibration in force.
 *
 * @param histories how each standard read before, by its name
 * @param slopes the slopes of the last accepted rounds that drew one, oldest first
 * @param base the line that the round being read is held against; empty where it began without one
 * @param doubted standards that read off since one passed, each with its last reading
 * @param refusedRound the standards of the refused round that the operator may accept
 * @param overridden the calibration in force, where it was refused and the operator accepted it
 * @param circumstances what is known of the electrode's day
 */
public record StandardsPast(
    Map<String, StandardHistory> histories,
    List<SlopeSeen> slopes,
    Optional<ResponseCurve> base,
    List<StandardPoint> doubted,
    List<StandardPoint> refusedRound,
    Optional<Overridden> overridden,
    Circumstances circumstances) {

  /** As many full calibrations as show whether a membrane ages. */
  private static final int MOST_SLOPES = 10;

  public StandardsPast {
    histories = Collections.unmodifiableMap(new TreeMap<>(histories));
    slopes = List.copyOf(slopes);
    doubted = List.copyOf(doubted);
    refusedRound = List.copyOf(refusedRound);
  }

  /**
   * The slope of a round.
   *
   * @param round when its first standard came to rest
   * @param percent % of the ideal slope
   */
  public record SlopeSeen(Instant round, double percent) {}

  /**
   * A calibration that the operator accepted.
   *
   * @param id its id
   * @param before the calibration in force before it
   */
  public record Overridden(String id, Optional<InForce> before) {}

  /** Of an electrode of which nothing is known. */
  static StandardsPast blank() {
    return new StandardsPast(
        Map.of(),
        List.of(),
        Optional.empty(),
        List.of(),
        List.of(),
        Optional.empty(),
        Circumstances.unknown());
  }

  /** The same without readings of solutions that are not defined any more. */
  StandardsPast only(Predicate<StandardPoint> defined) {
    return new StandardsPast(
        histories,
        slopes,
        base,
        doubted.stream().filter(defined).toList(),
        refusedRound.stream().allMatch(defined) ? refusedRound : List.of(),
        overridden,
        circumstances);
  }

  StandardHistory history(String standard) {
    return histories.getOrDefault(standard, StandardHistory.none());
  }

  StandardsPast inRound(Optional<ResponseCurve> heldAgainst) {
    return new StandardsPast(
        histories, slopes, heldAgainst, doubted, refusedRound, overridden, circumstances);
  }

  StandardsPast knowing(Circumstances now) {
    return new StandardsPast(histories, slopes, base, doubted, refusedRound, overridden, now);
  }

  /** A standard passed: none is doubted any more, and what was overridden is replaced. */
  StandardsPast passed(String standard, StandardHistory.Passed reading, Optional<SlopeSeen> slope) {
    Map<String, StandardHistory> all = new TreeMap<>(histories);
    all.put(standard, history(standard).with(reading));
    return new StandardsPast(
        all,
        slope.map(this::with).orElse(slopes),
        base,
        List.of(),
        List.of(),
        Optional.empty(),
        circumstances);
  }

  private List<SlopeSeen> with(SlopeSeen latest) {
    List<SlopeSeen> all = new ArrayList<>(slopes);
    all.removeIf(earlier -> earlier.round().equals(latest.round()));
    all.add(latest);
    return all.subList(Math.max(0, all.size() - MOST_SLOPES), all.size());
  }

  /** A round was refused; {@code off} where its last standard read off. */
  StandardsPast refused(List<StandardPoint> acceptable, Optional<StandardPoint> off) {
    List<StandardPoint> all = new ArrayList<>(doubted);
    off.ifPresent(
        point -> {
          all.removeIf(earlier -> earlier.standard().equals(point.standard()));
          all.add(point);
        });
    return new StandardsPast(histories, slopes, base, all, acceptable, overridden, circumstances);
  }

  /** The operator accepted the refused round. */
  StandardsPast accepted(String id, Optional<InForce> before) {
    return new StandardsPast(
        histories,
        slopes,
        base,
        List.of(),
        List.of(),
        Optional.of(new Overridden(id, before)),
        circumstances);
  }

  /** Nothing read before counts beside what is read now. */
  StandardsPast endRound() {
    return new StandardsPast(
        histories, slopes, Optional.empty(), List.of(), refusedRound, overridden, circumstances);
  }
}
