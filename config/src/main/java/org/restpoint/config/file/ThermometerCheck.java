package org.restpoint.config.file;

import java.util.List;
import java.util.Optional;
import org.restpoint.config.station.LinkSettings;
import org.restpoint.config.station.Numbers;
import org.restpoint.config.station.TemperatureNumber.Ohms;
import org.restpoint.config.station.Thermometer;

/** Knows of a thermometer by its figures whether there can be such a one. */
public interface ThermometerCheck {

  /** What keeps a thermometer of these figures from being one; empty where nothing does. */
  Optional<String> fault(Thermometer thermometer);

  /**
   * Tells a thermometer that cannot be.
   *
   * @param written what stands under {@code link}
   * @param link what was understood of it
   */
  static void tell(Vocabulary vocabulary, Entry written, Optional<LinkSettings> link) {
    Optional<String> fault =
        link.flatMap(LinkSettings::sent)
            .flatMap(Numbers::temperature)
            .flatMap(
                number ->
                    number instanceof Ohms ohms
                        ? vocabulary.thermometers().fault(ohms.thermometer())
                        : Optional.empty());
    List<Entry> places =
        LinkReader.KINDS.stream()
            .flatMap(kind -> written.inside(kind, "thermometer").stream())
            .toList();
    if (fault.isPresent() && !places.isEmpty()) {
      places.get(0).refuse("the figures of a thermometer", "other figures: " + fault.get());
    }
  }
}
