package org.restpoint.acquisition.event;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Optional;
import org.restpoint.acquisition.event.Result.Amount;
import org.restpoint.acquisition.event.Result.CalibrationUsed;
import org.restpoint.acquisition.event.Result.Interference;
import org.restpoint.acquisition.event.Result.Reported;
import org.restpoint.acquisition.event.Result.Revised;
import org.restpoint.stability.uncertainty.BudgetLine;

/** A result while some of it is changed; what nobody sets stays as it was. */
public final class ResultChange {

  private static final int PASS = 1;
  private static final int SUSPECT = 3;

  private final Result before;
  private int revision;
  private Optional<CalibrationUsed> calibration;
  private Optional<Amount> concentration;
  private Optional<Reported> reported;
  private Optional<List<BudgetLine>> budget;
  private Optional<List<Interference>> interference;
  private Optional<Preparation> preparation;
  private Optional<ObjectNode> sample;
  private List<String> flags;
  private Optional<List<Guidance>> guidance;
  private Optional<Revised> revised;

  ResultChange(Result before) {
    this.before = before;
    revision = before.revision();
    calibration = before.calibration();
    concentration = before.concentration();
    reported = before.reported();
    budget = before.budget();
    interference = before.interference();
    preparation = before.preparation();
    sample = before.sample();
    flags = before.flags();
    guidance = before.guidance();
    revised = before.revised();
  }

  ResultChange again(Revised how) {
    revision = before.revision() + 1;
    revised = Optional.of(how);
    return this;
  }

  ResultChange guidance(Optional<List<Guidance>> tables) {
    guidance = tables;
    return this;
  }

  ResultChange sample(ObjectNode record) {
    sample = Optional.of(record);
    return this;
  }

  /** Other flags: suspect where it passed, passed where it was suspect and the last is gone. */
  public ResultChange flags(List<String> codes) {
    flags = List.copyOf(codes);
    return this;
  }

  /** Another calibration to rest on. */
  public ResultChange calibration(CalibrationUsed used) {
    calibration = Optional.of(used);
    return this;
  }

  /** Another concentration, with where its uncertainty comes from. */
  public ResultChange concentration(
      Amount amount, List<BudgetLine> sources, List<Interference> others) {
    concentration = Optional.of(amount);
    budget = Optional.of(sources);
    interference = others.isEmpty() ? Optional.empty() : Optional.of(others);
    return this;
  }

  /** Another number for what was asked, and how it came about. */
  public ResultChange reported(Reported amount, Optional<Preparation> how) {
    reported = Optional.of(amount);
    preparation = how;
    return this;
  }

  /** The result as it is then. */
  public Result done() {
    int quality = before.quality();
    if (quality == PASS && !flags.isEmpty()) {
      quality = SUSPECT;
    } else if (quality == SUSPECT && flags.isEmpty()) {
      quality = PASS;
    }
    return new Result(
        before.id(),
        revision,
        before.station(),
        before.probe(),
        before.time(),
        before.outcome(),
        before.millivolts(),
        before.millivoltsUncertainty(),
        before.celsius(),
        before.readings(),
        before.elapsedSeconds(),
        before.rule(),
        before.forecast(),
        before.responseReadings(),
        before.latestMillivolts(),
        before.spreadMillivolts(),
        before.driftMillivoltsPerMinute(),
        before.driftStandardErrorMillivoltsPerMinute(),
        calibration,
        concentration,
        reported,
        budget,
        interference,
        before.verification(),
        preparation,
        sample,
        quality,
        flags,
        before.reasons(),
        guidance,
        revised,
        before.caution());
  }
}
