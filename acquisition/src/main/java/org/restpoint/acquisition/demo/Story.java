package org.restpoint.acquisition.demo;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import org.restpoint.acquisition.event.Calibration.Verdict;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.adapters.mqtt.BrokerException;

/**
 * The story: an electrode is soaked and calibrated, one portion of a standard is bad and found out,
 * a soil extract and a tile-drain water are read, and a check standard says whether all that holds.
 * Names, fields and concentrations are invented.
 */
final class Story {

  private static final double BENCH_CELSIUS = 22.0;

  private static final Solution SOAK = new Solution("soaking solution", 100, BENCH_CELSIUS);
  private static final Solution LOW = new Solution("standard low", 5, BENCH_CELSIUS);
  private static final Solution MID = new Solution("standard mid", 20, BENCH_CELSIUS);

  /** Some of the strongest standard was spilt into it. */
  private static final Solution BAD_MID = new Solution("standard mid", 33, BENCH_CELSIUS);

  private static final Solution HIGH = new Solution("standard high", 100, BENCH_CELSIUS);
  private static final Solution CHECK = new Solution("check standard", 40, BENCH_CELSIUS);
  private static final Solution EXTRACT = new Solution("soil extract", 24.6, 22.4);
  private static final Solution TILE = new Solution("tile-drain water", 12.7, 20.0);

  /** From the outlet to the bench: within the 48 h for which a nitrate sample keeps, cooled. */
  private static final Duration CARRIED = Duration.ofHours(3);

  private final Technician technician;
  private final Account account;
  private final Instant start;
  private final List<Finding> findings = new ArrayList<>();

  /** A story that begins at {@code start}. */
  Story(Technician technician, Account account, Instant start) {
    this.technician = technician;
    this.account = account;
    this.start = start;
  }

  /** Plays it; gives everything that was measured, in its order. */
  List<Finding> play() throws BrokerException, InterruptedException {
    soak();
    calibrate();
    soil();
    water();
    check();
    return List.copyOf(findings);
  }

  private void soak() throws BrokerException, InterruptedException {
    account.heading("SOAK");
    technician.soak(SOAK, "The electrode was stored dry. It goes into the soaking solution.", 20);
  }

  private void calibrate() throws BrokerException, InterruptedException {
    account.heading("CALIBRATE");
    technician.calibrate("low", LOW, "It goes into standard low, 5 mg/L.", Verdict.ACCEPTED);
    technician.calibrate(
        "mid",
        BAD_MID,
        "One standard does not show the slope, so on to standard mid, 20 mg/L, from a beaker that"
            + " stood open. What nobody at the bench knows: a drop of standard high fell into it,"
            + " and it holds 33 mg/L.",
        Verdict.REFUSED);
    findings.add(
        technician.measureInVain(
            "S-101, too early",
            EXTRACT,
            "Somebody is in a hurry and tries the soil extract all the same.",
            soilSample(),
            "calibration-refused"));
    technician.calibrate(
        "mid",
        MID,
        "The open beaker is the first suspect: a fresh portion of standard mid from the bottle.",
        Verdict.ACCEPTED);
    technician.calibrate("high", HIGH, "And standard high, 100 mg/L.", Verdict.ACCEPTED);
  }

  private void soil() throws BrokerException, InterruptedException {
    account.heading("A SOIL SAMPLE");
    findings.add(
        technician.measure(
            "S-101, soil extract",
            EXTRACT,
            "Sample S-101: soil from 30 cm, shaken with an extracting solution and filtered.",
            soilSample(),
            List.of()));
    account.below(
        "The number is of the extract as it was read. What it means for the soil depends on"
            + " how much soil, moisture and solution went into it.");
  }

  private void water() throws BrokerException, InterruptedException {
    account.heading("A TILE-WATER SAMPLE");
    technician.calibrate(
        "mid", MID, "A standard is due before each sample: standard mid again.", Verdict.ACCEPTED);
    findings.add(
        technician.measure(
            "W-7, tile water",
            TILE,
            "Sample W-7: water from a tile outlet, 2 \u00b0C colder than the standards.",
            waterSample(),
            List.of()));
    findings.add(
        technician.measure(
            "W-7, once more",
            TILE,
            "The same water once more, and the standard before it is left out.",
            waterSample(),
            List.of("standard-due")));
  }

  private void check() throws BrokerException, InterruptedException {
    account.heading("CHECK");
    findings.add(
        technician.verify(
            "check standard",
            CHECK,
            "A standard of another lot, 40 mg/L, is read as if it were a sample.",
            "check"));
  }

  private static ObjectNode soilSample() {
    return EventJson.mapper()
        .createObjectNode()
        .put("number", "S-101")
        .put("kind", "soil")
        .put("grower", "Ada Fields (invented)")
        .put("field", "Long Acre")
        .put("depthTopCentimetres", 0)
        .put("depthBottomCentimetres", 30);
  }

  private ObjectNode waterSample() {
    return EventJson.mapper()
        .createObjectNode()
        .put("number", "W-7")
        .put("kind", "tile water")
        .put("grower", "Ada Fields (invented)")
        .put("field", "Long Acre, south outlet")
        .put("taken", start.minus(CARRIED).truncatedTo(ChronoUnit.SECONDS).toString())
        .put("cooled", true)
        .put("keptCelsius", 4)
        .put("notes", "on ice, filtered");
  }
}
