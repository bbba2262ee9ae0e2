package org.restpoint.acquisition.check;

import org.restpoint.acquisition.event.Result.Verification;

/**
 * The likeliest causes of a check that failed, likeliest first, and what to do (common practice).
 */
final class CheckCauses {

  private static final String REPEAT = " Rinse and blot (never wipe), take a fresh portion, then: ";

  private CheckCauses() {}

  static String of(Verification check) {
    return switch (check.role()) {
      case CHECK_STANDARD -> ofStandard(check);
      case BLANK ->
          "Likely causes, in order: the electrode was not rinsed or not at rest after a strong"
              + " solution; water, extractant, adjustor or filters hold the ion; a vessel was not"
              + " clean; the electrode is near its detection limit."
              + REPEAT
              + "verify role=blank. If it fails again, find the source part by part, prepare anew,"
              + " and measure the flagged samples again.";
      case DUPLICATE ->
          "Likely causes, in order: the sample was not mixed well or settled out; the portions were"
              + " weighed, scooped or diluted unlike; the electrode was not at rest, or carried"
              + " solution over; the calibration drifted between the two."
              + REPEAT
              + "verify role=duplicate with the same sample. If it fails again, prepare the flagged"
              + " samples anew and measure them again.";
      case SPIKE -> ofSpike(check);
    };
  }

  private static String ofStandard(Verification check) {
    boolean low = check.difference().orElse(0) < 0;
    String causes =
        low
            ? "Likely causes, in order: the portion was diluted by rinse water; the electrode has"
                + " drifted since its calibration; it was not soaked or not at rest; the check"
                + " standard is old; its temperature is not that of the calibration standards; a"
                + " calibration standard was too strong."
            : "Likely causes, in order: solution of a stronger sample or standard was carried over;"
                + " the electrode has drifted since its calibration; it was not soaked or not at"
                + " rest; its temperature is not that of the calibration standards; a calibration"
                + " standard was diluted; the check standard has dried up.";
    return causes
        + REPEAT
        + "verify role=check-standard standard=%s. If it fails again, calibrate anew, verify, and measure the flagged samples again."
            .formatted(check.standard().orElse("NAME"));
  }

  private static String ofSpike(Verification check) {
    boolean low = check.difference().orElse(0) < 0;
    return "Likely causes, in order: "
        + (low
            ? "less was added than the station file says; something in the sample hides the ion"
                + " (another ion, salt, a fouled membrane); the electrode was not at rest; the"
                + " slope of the calibration is wrong."
            : "more was added than the station file says; the electrode drifted between the two"
                + " readings or was not at rest; the sample changes the slope (salt, another ion);"
                + " the slope of the calibration is wrong.")
        + REPEAT
        + "verify role=spike with the same sample. If it fails again and a check standard passes,"
        + " samples of this kind do not let the ion be found: dilute them or use known addition.";
  }
}
