package org.restpoint.stability.quality;

/**
 * What was read and added for a spike. Concentrations are in one unit and basis, volumes in another
 * one. Refuses, with an {@link IllegalArgumentException}, volumes and a spike that are not above
 * zero and readings below 0.
 *
 * @param unspiked the sample itself; below the detection limit it is given as 0
 * @param spiked the sample with the spike in it
 * @param sampleVolume the volume of sample that was spiked
 * @param spike the concentration of the solution added
 * @param spikeVolume the volume of it
 */
public record SpikeReadings(
    Measured unspiked,
    Measured spiked,
    Measured sampleVolume,
    Measured spike,
    Measured spikeVolume) {

  public SpikeReadings {
    if (unspiked.value() < 0 || spiked.value() < 0) {
      throw new IllegalArgumentException("a reading of a spike is 0 or above");
    }
    sampleVolume.above0("the volume of a sample");
    spike.above0("the concentration of a spike");
    spikeVolume.above0("the volume of a spike");
  }

  /** What the spike added, as a concentration in the mixture. */
  public double added() {
    return spike.value() * (spikeVolume.value() / (sampleVolume.value() + spikeVolume.value()));
  }

  /** What was added in percent of what the sample brought; infinite where that is 0. */
  public double addedPercentOfSample() {
    double brought = unspiked.value() * sampleVolume.value();
    return 100 * (spike.value() * spikeVolume.value() / brought);
  }
}
