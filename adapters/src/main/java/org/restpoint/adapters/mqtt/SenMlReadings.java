package org.restpoint.adapters.mqtt;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.restpoint.adapters.mqtt.MqttReadingFormat.SenMlRecords;
import org.restpoint.adapters.text.Excerpt;
import org.restpoint.stability.reading.Reading;

/**
 * The readings among the records of a pack: those of the names that are looked for, joined by their
 * time, in the order of time. A temperature at a moment without a potential is a reading of its
 * own, but a pack without any potential is rejected where one is looked for.
 */
final class SenMlReadings {

  private final Instant now;
  private final Map<Instant, BigDecimal> millivolts = new TreeMap<>();
  private final Map<Instant, BigDecimal> celsius = new TreeMap<>();
  private final Map<Instant, Boolean> ownTimes = new TreeMap<>();

  private SenMlReadings(Instant now) {
    this.now = now;
  }

  static List<Observation> read(Instant now, List<SenMlRecord> records, SenMlRecords names)
      throws RejectedMessageException {
    SenMlReadings readings = new SenMlReadings(now);
    for (SenMlRecord record : records) {
      if (names.millivolts().equals(Optional.of(record.name()))) {
        readings.note(record, readings.millivolts, SenMlUnits.millivolts(record));
      } else if (names.celsius().equals(Optional.of(record.name()))) {
        readings.note(record, readings.celsius, SenMlUnits.celsius(record));
      }
    }
    if (names.millivolts().isPresent() && readings.millivolts.isEmpty()) {
      throw missing(names.millivolts().get());
    }
    if (readings.ownTimes.isEmpty()) {
      throw missing(names.celsius().orElse(""));
    }
    return readings.joined();
  }

  private static RejectedMessageException missing(String name) {
    return new RejectedMessageException("it has no record named " + name);
  }

  private void note(SenMlRecord record, Map<Instant, BigDecimal> values, BigDecimal value)
      throws RejectedMessageException {
    Instant time = record.time(now);
    BigDecimal other = values.putIfAbsent(time, value);
    if (other != null && other.compareTo(value) != 0) {
      throw new RejectedMessageException(
          "it has two values of %s at %s".formatted(Excerpt.of(record.name()), time));
    }
    ownTimes.merge(time, !record.isNow(), Boolean::logicalOr);
  }

  private List<Observation> joined() throws RejectedMessageException {
    List<Observation> joined = new ArrayList<>();
    for (Map.Entry<Instant, Boolean> moment : ownTimes.entrySet()) {
      Instant time = moment.getKey();
      try {
        Reading reading = new Reading(time, at(time, millivolts), at(time, celsius));
        joined.add(new Observation(reading, moment.getValue()));
      } catch (IllegalArgumentException e) {
        throw new RejectedMessageException(String.valueOf(e.getMessage()));
      }
    }
    return joined;
  }

  private static OptionalDouble at(Instant time, Map<Instant, BigDecimal> values) {
    BigDecimal value = values.get(time);
    return value == null ? OptionalDouble.empty() : OptionalDouble.of(value.doubleValue());
  }
}
