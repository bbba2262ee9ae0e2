package org.restpoint.acquisition.day;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.restpoint.config.station.Care;

/**
 * Where an electrode's day stands: out of storage, soaking, in a standard, in a sample, to be
 * rinsed, back on its standard, in storage again. It knows what it was told and when, and no clock:
 * each step gives the day as it goes on.
 *
 * <p>Soaking counts from the first solution on that it stood in since it was stored or had dried,
 * whichever that was; so an electrode that was never soaked, but read for as long, has soaked too.
 *
 * @param place where the tip is
 * @param since since when
 * @param solution the solution that the tip is in, or was in last
 * @param soakedFrom from when on it counts as soaked; empty while it has not begun
 * @param rinseDue whether what it stood in last must be rinsed off before it goes elsewhere
 * @param dried whether the tip has been out of solution for too long since it was soaked
 * @param told when its state was told last
 */
public record Day(
    Place place,
    Instant since,
    Optional<String> solution,
    Optional<Instant> soakedFrom,
    boolean rinseDue,
    boolean dried,
    Instant told) {

  /** A person who waits sees each minute how much is left. */
  private static final Duration TOLD_EVERY = Duration.ofMinutes(1);

  private static final String SOAKING_SOLUTION = "its soaking solution";

  /** The day of an electrode that nothing is known of. */
  public static Day unknown(Instant now) {
    return new Day(Place.UNKNOWN, now, Optional.empty(), Optional.empty(), false, false, now);
  }

  /** It is put into its soaking solution for so long. */
  public Day soak(Instant now, Duration span) {
    return new Day(
        Place.SOAKING,
        now,
        Optional.of(SOAKING_SOLUTION),
        Optional.of(now.plus(span)),
        false,
        false,
        now);
  }

  /** Its soaking is given up before it is over. */
  public Day soakGivenUp(Instant now) {
    return new Day(Place.IN_SOLUTION, now, solution, Optional.empty(), false, dried, now);
  }

  /**
   * It is put into a standard, after which nothing needs to be rinsed off before the same standard,
   * and what stays on it does little harm elsewhere; or into anything else.
   *
   * @param soak how long an electrode soaks that has not begun to
   */
  public Day into(Instant now, String name, boolean standard, Duration soak) {
    return new Day(
        Place.IN_SOLUTION,
        now,
        Optional.of(name),
        soakedFrom.or(() -> Optional.of(now.plus(soak))),
        !standard,
        dried,
        now);
  }

  /** It is rinsed and blotted. */
  public Day rinse(Instant now) {
    return new Day(Place.OUT, now, solution, soakedFrom, false, dried, now);
  }

  /** It is put into storage, for a long rest or not. */
  public Day store(Instant now, boolean longRest) {
    return new Day(
        longRest ? Place.STORED_LONG : Place.STORED,
        now,
        Optional.empty(),
        Optional.empty(),
        false,
        false,
        now);
  }

  /** When something is to be told if nothing happens before; empty while nothing is. */
  public Optional<Instant> due(Optional<Care> care) {
    if (place == Place.SOAKING) {
      Instant end = soakedFrom.orElseThrow();
      Instant next = told.plus(TOLD_EVERY);
      return Optional.of(care.isPresent() && next.isBefore(end) ? next : end);
    }
    if (place == Place.OUT && !dried) {
      return care.map(asked -> since.plus(asked.dryAfter()));
    }
    return place == Place.STORED
        ? care.map(asked -> since.plus(asked.longRest()))
        : Optional.empty();
  }

  /** What was due has come: the soaking is over or goes on, the tip has dried, the rest is long. */
  public Day happen(Instant now) {
    if (place == Place.SOAKING) {
      boolean over = !now.isBefore(soakedFrom.orElseThrow());
      return new Day(
          over ? Place.IN_SOLUTION : place,
          over ? now : since,
          solution,
          soakedFrom,
          false,
          false,
          now);
    }
    if (place == Place.OUT) {
      return new Day(place, since, solution, Optional.empty(), rinseDue, true, now);
    }
    return new Day(Place.STORED_LONG, since, solution, soakedFrom, rinseDue, dried, now);
  }

  /** The steps that were skipped if it is put into a solution now, as flags. */
  public List<String> skipped(Instant now) {
    List<String> flags = new ArrayList<>();
    if (dried) {
      flags.add("tip-dried");
    }
    if (!isSoaked(now)) {
      flags.add("not-soaked");
    }
    if (rinseDue) {
      flags.add("not-rinsed");
    }
    return flags;
  }

  /** Whether it has soaked for as long as it is to. */
  public boolean isSoaked(Instant now) {
    return soakedFrom.filter(from -> !from.isAfter(now)).isPresent();
  }

  /** Since when the tip has been out of solution; empty while it is in one or nobody knows. */
  public Optional<Instant> outSince() {
    return place == Place.OUT ? Optional.of(since) : Optional.empty();
  }

  /** The same after the clock was set back, as far before now as it was before then. */
  public Day moved(Instant then, Instant now) {
    Duration back = Duration.between(now, then);
    return new Day(
        place,
        since.minus(back),
        solution,
        soakedFrom.map(from -> from.minus(back)),
        rinseDue,
        dried,
        told.minus(back));
  }
}
