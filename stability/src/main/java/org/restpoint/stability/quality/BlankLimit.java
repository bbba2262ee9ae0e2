package org.restpoint.stability.quality;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/** How much a blank may hold. */
public sealed interface BlankLimit {

  /** The highest concentration that is accepted, in the unit of the results. */
  double concentration();

  /** Where it comes from, for a person. */
  String words();

  /**
   * The blank holds no more than can just be seen.
   *
   * @param concentration the detection limit, above zero
   */
  record Detection(double concentration) implements BlankLimit {

    public Detection {
      requireAbove0(concentration);
    }

    @Override
    public String words() {
      return String.format(Locale.ROOT, "the detection limit %.4g", concentration);
    }
  }

  /**
   * The blank holds so little that it does not matter to the lowest sample.
   *
   * @param sharePercent the share that does not matter, above 0 to 100 %
   * @param lowestSample the lowest sample of the batch, above zero
   */
  record ShareOfLowestSample(double sharePercent, double lowestSample) implements BlankLimit {

    /** 5 % of the sample: EPA SW-846, chapter 1, on method blanks (from memory). */
    public static final double USUAL_PERCENT = 5;

    public ShareOfLowestSample {
      requireAbove0(lowestSample);
      if (!(sharePercent > 0) || sharePercent > 100) {
        throw new IllegalArgumentException("a share is above 0 to 100 %, not " + sharePercent);
      }
    }

    @Override
    public double concentration() {
      return sharePercent / 100 * lowestSample;
    }

    @Override
    public String words() {
      return String.format(
          Locale.ROOT, "%s %% of the lowest sample, %.4g", sharePercent, concentration());
    }
  }

  /**
   * The highest of several, as EPA SW-846, chapter 1, has it for method blanks.
   *
   * @param limits one or more
   */
  record HighestOf(List<BlankLimit> limits) implements BlankLimit {

    public HighestOf {
      limits = List.copyOf(limits);
      if (limits.isEmpty()) {
        throw new IllegalArgumentException("the highest of no limits is no limit");
      }
    }

    private BlankLimit highest() {
      return limits.stream()
          .max(Comparator.comparingDouble(BlankLimit::concentration))
          .orElseThrow();
    }

    @Override
    public double concentration() {
      return highest().concentration();
    }

    @Override
    public String words() {
      return highest().words();
    }
  }

  private static void requireAbove0(double concentration) {
    if (!(concentration > 0) || Double.isInfinite(concentration)) {
      throw new IllegalArgumentException("a concentration to compare with is above zero");
    }
  }
}
