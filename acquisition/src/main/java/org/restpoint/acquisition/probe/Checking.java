package org.restpoint.acquisition.probe;

import java.util.Optional;
import org.restpoint.acquisition.check.CheckPlan;

/**
 * How a probe's results are checked.
 *
 * @param plan the limits, and how often each check is due
 * @param standard a check standard that is none of the calibration standards
 */
public record Checking(CheckPlan plan, Optional<Standard> standard) {

  /** As usual, when somebody asks for it. */
  public static Checking usual() {
    return new Checking(CheckPlan.usual(), Optional.empty());
  }
}
