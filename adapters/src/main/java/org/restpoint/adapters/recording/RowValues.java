package org.restpoint.adapters.recording;

import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.restpoint.adapters.quantity.Meaning;
import org.restpoint.adapters.quantity.Parsed;
import org.restpoint.adapters.quantity.PotentialScale;
import org.restpoint.adapters.quantity.TemperatureScale;
import org.restpoint.stability.reading.Reading;

/**
 * Makes readings of the numbers of rows. In the native form they are mV and degrees Celsius and are
 * taken as they are; in any other they are what the layout says, within what is believed.
 */
final class RowValues {

  private final RecordingLayout layout;
  private final Optional<Meaning> ofThermometer;
  private final String potentialName;
  private final String temperatureName;
  private String fault = "";

  RowValues(RecordingLayout layout) {
    this.layout = layout;
    Meaning meaning = layout.meaning();
    this.ofThermometer =
        meaning.temperature().map(scale -> new Meaning(Optional.empty(), Optional.of(scale)));
    this.potentialName = meaning.potential().map(PotentialScale::name).orElse("");
    this.temperatureName = meaning.temperature().map(TemperatureScale::name).orElse("");
  }

  /** What the number of the potential is called. */
  String potentialName() {
    return potentialName;
  }

  /** What the number of the temperature is called. */
  String temperatureName() {
    return temperatureName;
  }

  /**
   * What a row lacks to be a reading; empty where it is one. Where the rows of several probes stand
   * in one file, one without a potential is a thermometer's.
   */
  Optional<String> gap(OptionalDouble potential, OptionalDouble temperature) {
    if (potential.isEmpty() && temperature.isEmpty()) {
      return Optional.of("a reading needs a potential or a temperature");
    }
    return potential.isEmpty() && !layout.hasProbes() && layout.columns().potential().isPresent()
        ? Optional.of("there is no " + potentialName)
        : Optional.empty();
  }

  /** The reading of a row that lacks nothing; null where {@link #fault()} says why. */
  @Nullable Reading reading(Instant time, OptionalDouble potential, OptionalDouble temperature) {
    if (layout.isNative()) {
      try {
        return new Reading(time, potential, temperature);
      } catch (IllegalArgumentException e) {
        fault = String.valueOf(e.getMessage());
        return null;
      }
    }
    Meaning meaning =
        potential.isPresent() ? layout.meaning() : ofThermometer.orElse(layout.meaning());
    Parsed parsed = meaning.parsed(potential, temperature);
    if (parsed instanceof Parsed.Values values) {
      return values.at(time);
    }
    fault = ((Parsed.Rejected) parsed).reason();
    return null;
  }

  /** What is wrong with the values. */
  String fault() {
    return fault;
  }
}
