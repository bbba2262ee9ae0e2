package org.restpoint.adapters.quantity;

import java.util.Optional;

/** What the devices of the tests send. */
public final class Meanings {

  /** A potential in mV. */
  public static final Meaning MILLIVOLTS =
      new Meaning(Optional.of(PotentialScale.MILLIVOLTS), Optional.empty());

  /** A potential in mV and a temperature in °C. */
  public static final Meaning MILLIVOLTS_AND_CELSIUS =
      new Meaning(Optional.of(PotentialScale.MILLIVOLTS), Optional.of(TemperatureScale.CELSIUS));

  /** A temperature in °C alone. */
  public static final Meaning CELSIUS =
      new Meaning(Optional.empty(), Optional.of(TemperatureScale.CELSIUS));

  /** What a pattern's groups say, for tests that are about other things. */
  public static Meaning of(String pattern) {
    boolean electrode = pattern.contains("<millivolts>");
    boolean thermometer = pattern.contains("<celsius>");
    return electrode ? thermometer ? MILLIVOLTS_AND_CELSIUS : MILLIVOLTS : CELSIUS;
  }

  private Meanings() {}
}
