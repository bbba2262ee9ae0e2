package org.restpoint.stability.thermometer;

import java.util.Locale;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.thermometer.ThermometerReading.Celsius;
import org.restpoint.stability.thermometer.ThermometerReading.OutOfRange;

/**
 * Where a thermometer works, and what a resistance outside of it looks like. Its ends count as
 * inside.
 *
 * <p>Edge results, by the code of the reason:
 *
 * <ul>
 *   <li>not a number: {@code thermometer-unreadable};
 *   <li>below 0 Ω: {@code thermometer-negative}, which no thermometer can have;
 *   <li>from 0 Ω to a tenth of the lowest resistance: {@code thermometer-shorted};
 *   <li>ten times the highest resistance and more, or infinite: {@code thermometer-open};
 *   <li>between these and the range: {@code thermometer-out-of-range}.
 * </ul>
 *
 * <p>The factor ten is our choice: leads and contacts add an ohm or two to a short, and a Pt100
 * wired where a Pt1000 is expected, or the other way round, shall not be called short or open in
 * water.
 *
 * @param lowestCelsius its lowest temperature, °C
 * @param highestCelsius its highest temperature, °C
 * @param lowestOhms the lower one of the resistances at its ends, Ω
 * @param highestOhms the higher one, Ω
 */
record WorkingRange(
    double lowestCelsius, double highestCelsius, double lowestOhms, double highestOhms) {

  private static final double FAR = 10;

  /** The temperatures that common encapsulated thermistors are made for; our choice. */
  static final double THERMISTOR_LOWEST_CELSIUS = -50;

  static final double THERMISTOR_HIGHEST_CELSIUS = 150;

  WorkingRange {
    if (!(lowestOhms > 0) || !(highestOhms > lowestOhms) || Double.isInfinite(highestOhms)) {
      throw new IllegalArgumentException(
          "a thermometer's resistance is finite, above zero and only rises or only falls; these"
              + " figures give no such resistance from "
              + lowestCelsius
              + " to "
              + highestCelsius
              + " °C: look whether they are this thermometer's, in ohm and kelvin");
    }
  }

  /** The range of a thermistor by its resistances. */
  static WorkingRange ofThermistor(double ohmsAtLowest, double ohmsAtHighest) {
    return new WorkingRange(
        THERMISTOR_LOWEST_CELSIUS, THERMISTOR_HIGHEST_CELSIUS, ohmsAtHighest, ohmsAtLowest);
  }

  /** A temperature that lies in the range, otherwise refused. */
  static double checked(double celsius, double lowestCelsius, double highestCelsius) {
    if (!(celsius >= lowestCelsius && celsius <= highestCelsius)) {
      throw new IllegalArgumentException(
          "this thermometer works from "
              + lowestCelsius
              + " to "
              + highestCelsius
              + " °C, not at "
              + celsius
              + " °C");
    }
    return celsius;
  }

  boolean holds(double ohms) {
    return ohms >= lowestOhms && ohms <= highestOhms;
  }

  /** A temperature of the range; rounding at its ends does not lead out of it. */
  Celsius reading(double celsius, double kelvinPerOhm) {
    return new Celsius(Math.min(highestCelsius, Math.max(lowestCelsius, celsius)), kelvinPerOhm);
  }

  /** Why a resistance outside the range tells no temperature. */
  OutOfRange refused(double ohms) {
    if (Double.isNaN(ohms)) {
      return because(
          "thermometer-unreadable",
          "the resistance is not a number",
          "Look at the meter's own display and at the wording of its lines.");
    }
    if (ohms < 0) {
      return because(
          "thermometer-negative",
          seen(ohms) + ": no resistance is below zero",
          "Look whether the meter's zero is set and the leads stand in the sockets for resistance.");
    }
    if (ohms < lowestOhms / FAR) {
      return because(
          "thermometer-shorted",
          seen(ohms) + expected() + ": it is shorted",
          "Look for touching wires and for water in plug or cable; unplug the thermometer: the"
              + " resistance must then be open.");
    }
    if (ohms >= highestOhms * FAR) {
      return because(
          "thermometer-open",
          seen(ohms) + expected() + ": it is open",
          "Look whether the thermometer is plugged in and no wire is broken.");
    }
    return because(
        "thermometer-out-of-range",
        seen(ohms) + expected(),
        "Look whether this kind of thermometer is the one that is wired, and whether a wire is"
            + " loose or wet.");
  }

  private static OutOfRange because(String code, String text, String remedy) {
    return new OutOfRange(new Reason(code, text, remedy));
  }

  private static String seen(double ohms) {
    return ohms == Double.POSITIVE_INFINITY
        ? "the thermometer reads no finite resistance"
        : String.format(Locale.ROOT, "the thermometer reads %.6g ohm", ohms);
  }

  private String expected() {
    return String.format(
        Locale.ROOT,
        ", expected %.6g to %.6g ohm (%.0f to %.0f °C)",
        lowestOhms,
        highestOhms,
        lowestCelsius,
        highestCelsius);
  }
}
