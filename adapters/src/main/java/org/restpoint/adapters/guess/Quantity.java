package org.restpoint.adapters.guess;

import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What a word beside a number says that the number is. */
enum Quantity {
  MILLIVOLTS("millivolts", "mv millivolt millivolts"),
  VOLTS("volts", "v volt volts"),
  MICROVOLTS("microvolts", "uv µv μv microvolt microvolts"),
  COUNTS("counts", "counts count cnt lsb"),
  CELSIUS("celsius", "c cel degc celsius"),
  KELVIN("kelvin", "k kelvin"),
  FAHRENHEIT("fahrenheit", "f degf fahrenheit"),
  OHMS("ohms", "ohm ohms ω"),
  /** A potential of which the unit is not said. */
  POTENTIAL("millivolts", "e u emf pot potential voltage ise orp redox"),
  /** A temperature of which the unit is not said. */
  TEMPERATURE("celsius", "t temp temperature tmp atc mtc water"),
  /** The raw number of a converter, by its label. */
  RAW("counts", "adc raw n c ad"),
  /** A resistance, by its label. */
  RESISTANCE("ohms", "r res rtd ntc pt rt"),
  /** Something that is neither. */
  OTHER("", "ph ppm ppb mg ug g mol mmol ms us s l min h % bat batt");

  /** A degree sign, or what a device with another table of characters has for it. */
  private static final String DEGREE = "^[^\\p{ASCII}](?=[CFcf]$)";

  private final String group;

  /** In lower case, a blank between two. */
  private final String words;

  Quantity(String group, String words) {
    this.group = group;
    this.words = " " + words + " ";
  }

  /** What a word after a number says as its unit. */
  static Optional<Quantity> ofUnit(String word) {
    return List.of(MILLIVOLTS, VOLTS, MICROVOLTS, COUNTS, CELSIUS, KELVIN, FAHRENHEIT, OHMS, OTHER)
        .stream()
        .filter(quantity -> quantity.isSaidBy(word))
        .findFirst();
  }

  /** What a word before a number says as its name. */
  static Optional<Quantity> ofLabel(String word) {
    return List.of(
            MILLIVOLTS,
            MICROVOLTS,
            POTENTIAL,
            TEMPERATURE,
            RAW,
            RESISTANCE,
            VOLTS,
            COUNTS,
            CELSIUS,
            KELVIN,
            FAHRENHEIT,
            OHMS,
            OTHER)
        .stream()
        .filter(quantity -> quantity.isSaidBy(word))
        .findFirst();
  }

  private boolean isSaidBy(String word) {
    return words.contains(" " + word.replaceFirst(DEGREE, "").toLowerCase(Locale.ROOT) + " ");
  }

  /** The group of a pattern that such a number stands in; empty for what is not read. */
  Optional<String> group() {
    return group.isEmpty() ? Optional.empty() : Optional.of(group);
  }

  boolean isPotential() {
    return this == MILLIVOLTS
        || this == VOLTS
        || this == MICROVOLTS
        || this == COUNTS
        || this == POTENTIAL
        || this == RAW;
  }

  boolean isTemperature() {
    return this == CELSIUS
        || this == KELVIN
        || this == FAHRENHEIT
        || this == OHMS
        || this == TEMPERATURE
        || this == RESISTANCE;
  }
}
