package org.restpoint.stability.move;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.restpoint.stability.fault.FaultFinder;

/**
 * Recognises from the potential alone that an electrode was taken out of a solution and put into
 * another.
 *
 * <p>The level E₀ follows the readings E that lie within the band b of it, {@code E₀ ← E₀ + (E −
 * E₀)(1 − e^(−Δt/τ))} with τ = {@value #FOLLOWING_SECONDS} s, so that creep and drift do not count
 * as a change. So many readings in a row with {@code |E − E₀| > b} are a departure; fewer are a
 * spike. In a departure the electrode is out of every solution where the potential turns back at
 * least twice by the given amount, or where as many readings lie beyond {@link
 * FaultFinder#RAIL_MILLIVOLTS}. It is in a solution again as soon as the readings of the calm span
 * lie together. Then it has moved through air, where air was seen; or else by a step, where the
 * calm level lies further than the step from the level left.
 *
 * <p>Edge results: before the first calm there is no level, and nothing is told. A step at which no
 * air is seen is a move only where a step is a sign at all: a bubble makes one too. A move through
 * air that ends on the old level is a move; so is an electrode that is lifted and put back. A move
 * without a step and without air shows nothing and is not told. A time that goes back begins anew.
 * A reading that is not finite is not looked at.
 *
 * <p>Reference: the method is ours; what an open input looks like is that of {@link FaultFinder}.
 */
public final class MoveDetector {

  /**
   * How fast the level follows, τ in s: what creeps after an early decision moves by some tenths of
   * a mV in a second and stays within a band of 5 mV; an answer to another solution, by mV in a
   * second, does not. Our choice.
   */
  static final double FOLLOWING_SECONDS = 5;

  private final MoveSigns signs;
  private final Calm calm;
  private @Nullable Double level;
  private Optional<Excursion> excursion = Optional.empty();
  private boolean departed;
  private boolean begun;
  private long lastNanos;
  private double last;
  private double lastButOne;
  private double lastButTwo;

  /** Begins in an unknown place. */
  public MoveDetector(MoveSigns signs) {
    this.signs = signs;
    this.calm = new Calm(signs);
  }

  /** Whether a solution can give this potential. */
  static boolean isOfSolution(double millivolts) {
    return Math.abs(millivolts) <= FaultFinder.RAIL_MILLIVOLTS;
  }

  /** Forgets the level and whatever was seen. */
  public void begin() {
    level = null;
    stay();
    calm.forget();
    begun = false;
  }

  /**
   * It is known from elsewhere that the potential rests: the level is the middle one of the last
   * three readings, and what was seen before does not count. Before the first reading it changes
   * nothing.
   */
  public void rested() {
    if (begun) {
      level =
          Math.max(Math.min(last, lastButOne), Math.min(Math.max(last, lastButOne), lastButTwo));
      stay();
    }
  }

  /**
   * Takes a reading.
   *
   * @param nanos its time in ns, from any zero
   * @param millivolts the potential, mV
   * @return what it tells; a move is told once
   */
  public Motion accept(long nanos, double millivolts) {
    if (!Double.isFinite(millivolts)) {
      return Motion.NONE;
    }
    if (begun && nanos < lastNanos) {
      begin();
    }
    double seconds = begun ? (nanos - lastNanos) / 1e9 : 0;
    note(nanos, millivolts);
    Double from = level;
    if (from == null) {
      arrive(nanos, millivolts);
      return Motion.NONE;
    }
    return departed ? away(nanos, millivolts, from) : staying(nanos, millivolts, from, seconds);
  }

  private void note(long nanos, double millivolts) {
    lastButTwo = begun ? lastButOne : millivolts;
    lastButOne = begun ? last : millivolts;
    last = millivolts;
    lastNanos = nanos;
    begun = true;
  }

  private Motion staying(long nanos, double millivolts, double from, double seconds) {
    if (isOfSolution(millivolts) && Math.abs(millivolts - from) <= signs.bandMillivolts()) {
      excursion = Optional.empty();
      level = from + (millivolts - from) * -Math.expm1(-seconds / FOLLOWING_SECONDS);
      return Motion.NONE;
    }
    Excursion off = excursion.orElseGet(() -> new Excursion(signs, from));
    excursion = Optional.of(off);
    off.add(millivolts);
    if (!off.isDeparture()) {
      return Motion.NONE;
    }
    departed = true;
    calm.forget();
    isCalm(nanos, millivolts);
    return off.isInAir() ? Motion.OUT_OF_SOLUTION : Motion.NONE;
  }

  private Motion away(long nanos, double millivolts, double from) {
    Excursion off = excursion.orElseThrow();
    off.add(millivolts);
    if (!arrive(nanos, millivolts)) {
      return off.isInAir() ? Motion.OUT_OF_SOLUTION : Motion.NONE;
    }
    if (off.isInAir()) {
      return Motion.MOVED_THROUGH_AIR;
    }
    return signs.stepMillivolts().isPresent()
            && Math.abs(millivolts - from) > signs.stepMillivolts().getAsDouble()
        ? Motion.MOVED_BY_STEP
        : Motion.NONE;
  }

  /** Whether it is in a solution with this reading; its level is known then. */
  private boolean arrive(long nanos, double millivolts) {
    if (!isCalm(nanos, millivolts)) {
      return false;
    }
    level = millivolts;
    stay();
    return true;
  }

  private boolean isCalm(long nanos, double millivolts) {
    if (!isOfSolution(millivolts)) {
      calm.forget();
      return false;
    }
    return calm.accept(nanos, millivolts);
  }

  private void stay() {
    excursion = Optional.empty();
    departed = false;
    calm.forget();
  }
}
