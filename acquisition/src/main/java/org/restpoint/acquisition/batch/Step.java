package org.restpoint.acquisition.batch;

import org.restpoint.stability.calibration.Reason;

/** What becomes of a word said to a batch. */
public sealed interface Step {

  /** It is taken; the batch as it is then. */
  record Taken(Batch batch) implements Step {}

  /** It is out of order; why, and what is expected. */
  record Refused(Reason reason) implements Step {}
}
