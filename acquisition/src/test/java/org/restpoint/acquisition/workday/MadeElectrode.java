package org.restpoint.acquisition.workday;

import java.util.Random;

/**
 * A nitrate electrode that is made up: {@code E = 300 mV - 57 mV · lg(c / 10 mg/L) - 0.3 mV/h · t},
 * and 2 mV less while it has dried; 57 mV a decade is 97.3 % of the ideal slope at 22 °C. It
 * answers a new solution with a time constant of 3 s and has white noise of 0.02 mV.
 *
 * <p>Taken from one solution straight into another, it brings 0.5 mL of it into the 25 mL there.
 * After 5 min in the air it has dried, until it has been soaked.
 */
final class MadeElectrode {

  static final double CELSIUS = 22.0;

  private static final double SECONDS_TO_ANSWER = 3;
  private static final double NOISE_MILLIVOLTS = 0.02;
  private static final double CARRIED_SHARE = 0.5 / 25;
  private static final int DRIES_AFTER_SECONDS = 300;

  private final Random random = new Random(28);
  private String vessel = "";
  private double solution = Double.NaN;
  private double film = 250;
  private int airSeconds;
  private boolean dried;

  /** It is put into a vessel, or into the air where {@code milligramsPerLitre} is NaN. */
  void put(String name, double milligramsPerLitre) {
    if (name.equals(vessel)) {
      return;
    }
    dried = dried && !vessel.startsWith("soaking");
    double carried = Double.isNaN(solution) ? 0 : CARRIED_SHARE;
    double before = Double.isNaN(solution) ? 0 : solution;
    vessel = name;
    solution = (milligramsPerLitre + carried * before) / (1 + carried);
    airSeconds = 0;
  }

  /** What it shows after so many seconds more, in mV. */
  double read(int seconds, double hours) {
    if (Double.isNaN(solution)) {
      airSeconds += seconds;
      dried |= airSeconds > DRIES_AFTER_SECONDS;
    } else {
      double rest = 300 - 57 * Math.log10(solution / 10) - 0.3 * hours - (dried ? 2 : 0);
      film += (rest - film) * -Math.expm1(-seconds / SECONDS_TO_ANSWER);
    }
    return Math.round(100 * (film + NOISE_MILLIVOLTS * random.nextGaussian())) / 100.0;
  }
}
