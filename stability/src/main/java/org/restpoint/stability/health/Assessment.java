package org.restpoint.stability.health;

import java.util.Optional;
import org.restpoint.stability.calibration.Reason;

/** How a quantity of an electrode does against its own history. */
public sealed interface Assessment {

  /** What to tell a person, and what to do; empty where there is nothing. */
  Optional<Reason> reason();

  /**
   * Too little was seen, or all of it at one time.
   *
   * @param seen how many observations are there
   * @param needed how many are needed
   */
  record NotEnoughHistory(int seen, int needed) implements Assessment {

    @Override
    public Optional<Reason> reason() {
      return Optional.of(
          new Reason(
              "health-not-enough-history",
              seen
                  + " observations are there, at least "
                  + needed
                  + ", at different times, are"
                  + " needed",
              "Go on calibrating and checking; the trend shows by itself."));
    }
  }

  /**
   * It stays as it was.
   *
   * @param base the first observations
   * @param trend what slope there is, which does not differ from none
   */
  record Steady(Baseline base, Trend trend) implements Assessment {

    @Override
    public Optional<Reason> reason() {
      return Optional.empty();
    }
  }

  /**
   * It goes one way.
   *
   * @param base the first observations
   * @param trend how fast
   * @param projection when it comes to the limit ahead
   * @param told what to tell a person
   */
  record Drifting(Baseline base, Trend trend, Projection projection, Reason told)
      implements Assessment {

    @Override
    public Optional<Reason> reason() {
      return Optional.of(told);
    }
  }

  /**
   * The latest observation is out of the way of those before it.
   *
   * @param base the first observations
   * @param latest the one
   * @param expected what those before it let expect
   * @param deviations how far it is from that, in standard deviations, with its sign
   * @param told what to tell a person
   */
  record Jumped(Baseline base, Observation latest, double expected, double deviations, Reason told)
      implements Assessment {

    @Override
    public Optional<Reason> reason() {
      return Optional.of(told);
    }
  }
}
