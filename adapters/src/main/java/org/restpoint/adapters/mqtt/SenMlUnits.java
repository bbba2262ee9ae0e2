package org.restpoint.adapters.mqtt;

import java.util.Optional;
import org.restpoint.adapters.quantity.PotentialScale;
import org.restpoint.adapters.quantity.TemperatureScale;
import org.restpoint.adapters.text.Excerpt;

/**
 * The scale of a record's number. A unit in the record counts: V, Cel, K, Ohm and count of RFC 8428
 * (section 12.1), mV of RFC 8798 (section 3). Without one the number is what the settings say.
 */
final class SenMlUnits {

  private SenMlUnits() {}

  static PotentialScale potential(SenMlRecord record, PotentialScale settings)
      throws RejectedMessageException {
    boolean counts = settings.name().equals("counts");
    Optional<PotentialScale> scale =
        record.unit().isEmpty()
            ? Optional.of(settings)
            : switch (record.unit().get()) {
              case "V" -> Optional.of(PotentialScale.VOLTS);
              case "mV" -> Optional.of(PotentialScale.MILLIVOLTS);
              case "count" -> Optional.of(settings).filter(any -> counts);
              default -> Optional.empty();
            };
    return scale.orElseThrow(() -> foreign(record, counts ? "count, V or mV" : "V or mV"));
  }

  static TemperatureScale temperature(SenMlRecord record, TemperatureScale settings)
      throws RejectedMessageException {
    boolean ohms = settings.name().equals("ohms");
    Optional<TemperatureScale> scale =
        record.unit().isEmpty()
            ? Optional.of(settings)
            : switch (record.unit().get()) {
              case "Cel" -> Optional.of(TemperatureScale.CELSIUS);
              case "K" -> Optional.of(TemperatureScale.KELVIN);
              case "Ohm" -> Optional.of(settings).filter(any -> ohms);
              default -> Optional.empty();
            };
    return scale.orElseThrow(() -> foreign(record, ohms ? "Ohm, Cel or K" : "Cel or K"));
  }

  private static RejectedMessageException foreign(SenMlRecord record, String expected) {
    return new RejectedMessageException(
        "expected %s as unit of %s, found %s"
            .formatted(expected, Excerpt.of(record.name()), Excerpt.of(record.unit().orElse(""))));
  }
}
