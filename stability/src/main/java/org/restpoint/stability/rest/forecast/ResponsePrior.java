package org.restpoint.stability.rest.forecast;

import java.util.Arrays;
import java.util.List;

/**
 * How an electrode is known to respond before it is read: how likely each response curve is, by the
 * level where it comes to rest and by the direction from which it does. Numbers alone, so that it
 * can be written down and taken up again.
 *
 * <p>A curve's own forecast tells which level and which direction it is weighed by. Every curve
 * stays possible, for one of likelihood 0 would be out whatever the readings say: mix what is
 * learnt from a few responses with {@link #uninformed()}.
 *
 * @param levels one or more, by rising limits; the last also stands for all above it
 * @param unforeseen the part of the way still to go that may be foreseen wrong, from 0 to 1; an
 *     electrode that is known may be foreseen from further away
 */
public record ResponsePrior(List<Level> levels, double unforeseen) {

  /** Of an electrode that nothing is known of. Our choice, tried from 0 to 0.2. */
  private static final double UNFORESEEN = 0.07;

  private static final ResponsePrior UNINFORMED = alike(curveWeights(Candidates.uninformed()));

  /**
   * A range of resting potentials.
   *
   * @param upToMillivolts its upper limit
   * @param rising how likely each curve is for a potential that rises to its rest
   * @param falling the same for one that falls
   */
  public record Level(double upToMillivolts, List<Double> rising, List<Double> falling) {

    public Level {
      if (Double.isNaN(upToMillivolts)) {
        throw new IllegalArgumentException("a limit of potentials is a number");
      }
      rising = checked(rising);
      falling = checked(falling);
    }

    private static List<Double> checked(List<Double> weights) {
      if (weights.size() != Candidates.COUNT) {
        throw new IllegalArgumentException(
            "a prior weighs " + Candidates.COUNT + " response curves, not " + weights.size());
      }
      for (double weight : weights) {
        if (!(weight > 0) || Double.isInfinite(weight)) {
          throw new IllegalArgumentException("a likelihood is above 0, not " + weight);
        }
      }
      return List.copyOf(weights);
    }
  }

  public ResponsePrior {
    if (levels.isEmpty()) {
      throw new IllegalArgumentException("a prior has one level at least");
    }
    double before = Double.NEGATIVE_INFINITY;
    for (Level level : levels) {
      if (!(level.upToMillivolts() > before)) {
        throw new IllegalArgumentException("the levels of a prior come by rising limits");
      }
      before = level.upToMillivolts();
    }
    levels = List.copyOf(levels);
    if (!(unforeseen >= 0 && unforeseen <= 1)) {
      throw new IllegalArgumentException("a part is from 0 to 1, not " + unforeseen);
    }
  }

  /** Nothing is known of the electrode. */
  public static ResponsePrior uninformed() {
    return UNINFORMED;
  }

  /** The same whatever the level and the direction. */
  public static ResponsePrior alike(List<Double> weights) {
    return new ResponsePrior(
        List.of(new Level(Double.POSITIVE_INFINITY, weights, weights)), UNFORESEEN);
  }

  /** How many response curves a prior weighs. */
  public static int curves() {
    return Candidates.COUNT;
  }

  static List<Double> curveWeights(double[] weights) {
    return Arrays.stream(weights).boxed().toList();
  }
}
