package org.restpoint.config.station;

import java.time.Duration;
import java.util.List;

/** A rule of rest. */
public sealed interface SettleRule {

  /** What must go by at least before it can hold. */
  Duration shortestWait();

  /**
   * So many readings in a row within a tolerance.
   *
   * @param readings how many, 2 or more
   * @param within the largest minus the smallest of them, at most
   * @param span how far back they reach at least; 0 for readings alone
   */
  record Consecutive(int readings, Within within, Duration span) implements SettleRule {

    /** Checks the ranges. */
    public Consecutive {
      if (readings < 2) {
        throw new IllegalArgumentException("a rule needs 2 readings or more: " + readings);
      }
      if (span.isNegative()) {
        throw new IllegalArgumentException("a span is 0 or above: " + span);
      }
    }

    /**
     * The rule by readings alone.
     *
     * @param readings how many, 2 or more
     * @param withinMillivolts the largest minus the smallest of them, in mV, above 0
     */
    public Consecutive(int readings, double withinMillivolts) {
      this(readings, new Within.Millivolts(withinMillivolts), Duration.ZERO);
    }

    @Override
    public Duration shortestWait() {
      return span;
    }
  }

  /** How far apart readings may lie. */
  sealed interface Within {

    /**
     * In mV.
     *
     * @param millivolts above 0
     */
    record Millivolts(double millivolts) implements Within {

      /** Checks the range. */
      public Millivolts {
        if (!(millivolts > 0) || !Double.isFinite(millivolts)) {
          throw new IllegalArgumentException("a tolerance is above 0 mV: " + millivolts);
        }
      }
    }

    /**
     * In per cent of the concentration.
     *
     * @param percent above 0
     */
    record Percent(double percent) implements Within {

      /** Checks the range. */
      public Percent {
        if (!(percent > 0) || !Double.isFinite(percent)) {
          throw new IllegalArgumentException("a tolerance is above 0 %: " + percent);
        }
      }
    }
  }

  /**
   * A drift below a limit.
   *
   * @param belowMillivoltsPerMinute the limit, above 0
   * @param over the window it is looked at over, above 0
   * @param standardErrors how many of its standard errors are added to it, 0 or above
   * @param readingsAtLeast how many readings the window needs, 3 or more
   */
  record Drift(
      double belowMillivoltsPerMinute, Duration over, double standardErrors, int readingsAtLeast)
      implements SettleRule {

    /** Checks the ranges. */
    public Drift {
      if (!(belowMillivoltsPerMinute > 0) || !Double.isFinite(belowMillivoltsPerMinute)) {
        throw new IllegalArgumentException(
            "a limit of drift is above 0 mV/min: " + belowMillivoltsPerMinute);
      }
      if (over.isNegative() || over.isZero()) {
        throw new IllegalArgumentException("a window is longer than 0: " + over);
      }
      if (!(standardErrors >= 0) || !Double.isFinite(standardErrors)) {
        throw new IllegalArgumentException("standard errors are 0 or above: " + standardErrors);
      }
      if (readingsAtLeast < 3) {
        throw new IllegalArgumentException("a drift needs 3 readings: " + readingsAtLeast);
      }
    }

    @Override
    public Duration shortestWait() {
      return over;
    }
  }

  /**
   * The rest is known before it is reached: it is foretold from the readings so far.
   *
   * @param within how near the forecast has to be
   * @param learn whether what finished readings tell of the electrode's response is kept for the
   *     next; in a combination never
   */
  record Forecast(Within within, boolean learn) implements SettleRule {

    /** Nothing is foretold earlier than this after the first reading. */
    private static final Duration EARLIEST = Duration.ofSeconds(8);

    @Override
    public Duration shortestWait() {
      return EARLIEST;
    }
  }

  /**
   * At rest when every rule says so.
   *
   * @param rules 2 or more
   */
  record AllOf(List<SettleRule> rules) implements SettleRule {

    /** Checks that there are several. */
    public AllOf {
      rules = several(rules);
    }

    @Override
    public Duration shortestWait() {
      return rules.stream()
          .map(SettleRule::shortestWait)
          .max(Duration::compareTo)
          .orElse(Duration.ZERO);
    }
  }

  /**
   * At rest as soon as one rule says so.
   *
   * @param rules 2 or more, the one trusted most first
   */
  record AnyOf(List<SettleRule> rules) implements SettleRule {

    /** Checks that there are several. */
    public AnyOf {
      rules = several(rules);
    }

    @Override
    public Duration shortestWait() {
      return rules.stream()
          .map(SettleRule::shortestWait)
          .min(Duration::compareTo)
          .orElse(Duration.ZERO);
    }
  }

  private static List<SettleRule> several(List<SettleRule> rules) {
    if (rules.size() < 2) {
      throw new IllegalArgumentException("a combination is of 2 rules or more: " + rules.size());
    }
    return List.copyOf(rules);
  }
}
