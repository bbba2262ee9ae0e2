package org.restpoint.adapters.mqtt;

import java.math.BigDecimal;
import org.restpoint.adapters.text.Excerpt;

/**
 * What a record's number is in the units of a reading. A unit in the record counts: V, Cel and K of
 * RFC 8428 (section 12.1), mV of RFC 8798 (section 3). Conversions are exact.
 */
final class SenMlUnits {

  private static final BigDecimal ICE_POINT_KELVIN = new BigDecimal("273.15");

  private SenMlUnits() {}

  static BigDecimal millivolts(SenMlRecord record) throws RejectedMessageException {
    BigDecimal value = number(record);
    return switch (record.unit().orElse("mV")) {
      case "mV" -> value;
      case "V" -> value.movePointRight(3);
      default -> throw foreign(record, "V or mV");
    };
  }

  static BigDecimal celsius(SenMlRecord record) throws RejectedMessageException {
    BigDecimal value = number(record);
    return switch (record.unit().orElse("Cel")) {
      case "Cel" -> value;
      case "K" -> value.subtract(ICE_POINT_KELVIN);
      default -> throw foreign(record, "Cel or K");
    };
  }

  private static BigDecimal number(SenMlRecord record) throws RejectedMessageException {
    if (record.value().isEmpty()) {
      throw new RejectedMessageException(
          "expected a number (v) in the record %s, found %s"
              .formatted(Excerpt.of(record.name()), record.valueLabel().orElse("no value")));
    }
    return record.value().get();
  }

  private static RejectedMessageException foreign(SenMlRecord record, String expected) {
    return new RejectedMessageException(
        "expected %s as unit of %s, found %s"
            .formatted(expected, Excerpt.of(record.name()), Excerpt.of(record.unit().orElse(""))));
  }
}
