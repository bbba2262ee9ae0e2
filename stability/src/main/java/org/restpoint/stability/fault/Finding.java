package org.restpoint.stability.fault;

import java.util.OptionalDouble;
import org.restpoint.stability.calibration.Reason;

/** What the solutions say of the chain. */
public sealed interface Finding {

  /**
   * Something is wrong with it.
   *
   * @param fault what
   * @param slopePercent the slope seen, in percent of the ideal one, where one could be drawn
   * @param evidence what was seen, and what to do
   */
  record Faulty(Fault fault, OptionalDouble slopePercent, Reason evidence) implements Finding {}

  /**
   * It answers to the solutions, the right way; whether well enough is for the limits of the slope.
   *
   * @param slopePercent the slope seen, in percent of the ideal one
   */
  record Answering(double slopePercent) implements Finding {}

  /**
   * Nothing is seen to be wrong, but nothing shows either that it answers.
   *
   * @param missing what is missing, and what to do
   */
  record Untold(Reason missing) implements Finding {}
}
