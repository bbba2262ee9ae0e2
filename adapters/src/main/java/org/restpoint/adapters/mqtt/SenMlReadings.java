package org.restpoint.adapters.mqtt;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.restpoint.adapters.quantity.Meaning;
import org.restpoint.adapters.quantity.PotentialScale;
import org.restpoint.adapters.quantity.TemperatureScale;
import org.restpoint.adapters.text.Excerpt;

/**
 * The readings among the records of a pack: those of the names that are looked for, joined by their
 * time, in the order of time. A temperature at a moment without a potential is a reading of its
 * own, but a pack without any potential is rejected where one is looked for.
 */
final class SenMlReadings {

  /**
   * A number with its scale.
   *
   * @param <S> a scale of potentials or of temperatures
   */
  private record Scaled<S>(S scale, double number) {}

  private final Instant now;
  private final Map<Instant, Scaled<PotentialScale>> potentials = new TreeMap<>();
  private final Map<Instant, Scaled<TemperatureScale>> temperatures = new TreeMap<>();
  private final Map<Instant, Boolean> ownTimes = new TreeMap<>();

  private SenMlReadings(Instant now) {
    this.now = now;
  }

  static List<Observation> read(Instant now, List<SenMlRecord> records, Wanted wanted)
      throws RejectedMessageException {
    SenMlReadings readings = new SenMlReadings(now);
    for (SenMlRecord record : records) {
      Optional<String> name = Optional.of(record.name());
      if (wanted.potential().equals(name)) {
        PotentialScale scale = wanted.meaning().potential().orElseThrow();
        readings.note(record, readings.potentials, SenMlUnits.potential(record, scale));
      } else if (wanted.temperature().equals(name)) {
        TemperatureScale scale = wanted.meaning().temperature().orElseThrow();
        readings.note(record, readings.temperatures, SenMlUnits.temperature(record, scale));
      }
    }
    if (wanted.potential().isPresent() && readings.potentials.isEmpty()) {
      throw missing(wanted.potential().get());
    }
    if (readings.ownTimes.isEmpty()) {
      throw missing(wanted.temperature().orElse(""));
    }
    return readings.joined();
  }

  private static RejectedMessageException missing(String name) {
    return new RejectedMessageException("it has no record named " + name);
  }

  private <S> void note(SenMlRecord record, Map<Instant, Scaled<S>> numbers, S scale)
      throws RejectedMessageException {
    if (record.value().isEmpty()) {
      throw new RejectedMessageException(
          "expected a number (v) in the record %s, found %s"
              .formatted(Excerpt.of(record.name()), record.valueLabel().orElse("no value")));
    }
    Scaled<S> number = new Scaled<>(scale, record.value().get().doubleValue());
    Instant time = record.time(now);
    @Nullable Scaled<S> other = numbers.putIfAbsent(time, number);
    if (other != null && !other.equals(number)) {
      throw new RejectedMessageException(
          "it has two values of %s at %s".formatted(Excerpt.of(record.name()), time));
    }
    ownTimes.merge(time, !record.isNow(), Boolean::logicalOr);
  }

  private List<Observation> joined() throws RejectedMessageException {
    List<Observation> joined = new ArrayList<>();
    for (Map.Entry<Instant, Boolean> moment : ownTimes.entrySet()) {
      Instant time = moment.getKey();
      Optional<Scaled<PotentialScale>> potential = Optional.ofNullable(potentials.get(time));
      Optional<Scaled<TemperatureScale>> temperature = Optional.ofNullable(temperatures.get(time));
      Meaning meaning = new Meaning(potential.map(Scaled::scale), temperature.map(Scaled::scale));
      joined.add(
          new Observation(
              Believed.reading(meaning.parsed(number(potential), number(temperature)), time),
              moment.getValue()));
    }
    return joined;
  }

  private static <S> OptionalDouble number(Optional<Scaled<S>> scaled) {
    return scaled.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(scaled.get().number());
  }
}
