package org.restpoint.stability.preparation;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * How a water sample, or a standard, came into the vessel in which it is read.
 *
 * <p>{@code f = V_total/V_s}: what its label says over what stands in the vessel. Volumes are taken
 * to add up, which dilute aqueous solutions do to better than 0.1 %.
 */
public sealed interface WaterPortion {

  /** The volumes that f depends on, in order. */
  List<Volume> volumes();

  /**
   * f for these volumes, 1 or above.
   *
   * @param millilitres as many as {@link #volumes()}, in their order
   */
  double factor(double[] millilitres);

  /** The adjustor's share of the volume read, 0 to 1; 0 where there is none. */
  double adjustorShare();

  /**
   * A volume of sample to which others are added.
   *
   * @param sample V_s
   * @param adjustor the ionic-strength adjustor, where any is used
   * @param others whatever else is added: a buffer, a spike
   */
  record Added(Volume sample, Optional<Volume> adjustor, List<Volume> others)
      implements WaterPortion {

    public Added {
      others = List.copyOf(others);
    }

    /** A sample with adjustor and nothing else. */
    public static Added adjusted(Volume sample, Volume adjustor) {
      return new Added(sample, Optional.of(adjustor), List.of());
    }

    /** A sample as it is, read without any addition. */
    public static Added plain(Volume sample) {
      return new Added(sample, Optional.empty(), List.of());
    }

    @Override
    public List<Volume> volumes() {
      return Stream.concat(Stream.concat(Stream.of(sample), adjustor.stream()), others.stream())
          .toList();
    }

    @Override
    public double factor(double[] millilitres) {
      double total = 0;
      for (double volume : millilitres) {
        total += volume;
      }
      return total / millilitres[0];
    }

    @Override
    public double adjustorShare() {
      double total = volumes().stream().mapToDouble(Volume::millilitres).sum();
      return adjustor.map(volume -> volume.millilitres() / total).orElse(0.0);
    }
  }

  /**
   * A volume of sample, with adjustor or without, made up to the volume of a flask. Refuses, with
   * an {@link IllegalArgumentException}, a flask too small for both.
   *
   * @param sample V_s
   * @param adjustor the ionic-strength adjustor, where any is used
   * @param flask V_total
   */
  record MadeUp(Volume sample, Optional<Volume> adjustor, Volume flask) implements WaterPortion {

    public MadeUp {
      double inside =
          sample.millilitres() + adjustor.map(volume -> volume.millilitres()).orElse(0.0);
      if (inside > flask.millilitres()) {
        throw new IllegalArgumentException(
            inside + " mL do not go into a flask of " + flask.millilitres() + " mL");
      }
    }

    @Override
    public List<Volume> volumes() {
      return List.of(sample, flask);
    }

    @Override
    public double factor(double[] millilitres) {
      return millilitres[1] / millilitres[0];
    }

    @Override
    public double adjustorShare() {
      return adjustor.map(volume -> volume.millilitres() / flask.millilitres()).orElse(0.0);
    }
  }

  /**
   * A solution whose label says what stands in the vessel, adjustor included: f = 1. Refuses, with
   * an {@link IllegalArgumentException}, more adjustor than there is solution.
   *
   * @param total the whole volume
   * @param adjustor the ionic-strength adjustor in it, where any is used
   */
  record AsRead(Volume total, Optional<Volume> adjustor) implements WaterPortion {

    public AsRead {
      if (adjustor.filter(volume -> volume.millilitres() > total.millilitres()).isPresent()) {
        throw new IllegalArgumentException("there is less adjustor than solution");
      }
    }

    @Override
    public List<Volume> volumes() {
      return List.of();
    }

    @Override
    public double factor(double[] millilitres) {
      return 1;
    }

    @Override
    public double adjustorShare() {
      return adjustor.map(volume -> volume.millilitres() / total.millilitres()).orElse(0.0);
    }
  }
}
