package org.restpoint.stability.addition;

import java.util.List;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.uncertainty.Budget;

/** What came of a method by addition. */
public sealed interface AdditionOutcome {

  /**
   * A concentration.
   *
   * @param concentration of the liquid as it was taken, before adjustor, in the unit of the
   *     standard; a budget of every source
   * @param remarks what a person has to know about it; empty where nothing is
   */
  record Answer(Budget concentration, List<Reason> remarks) implements AdditionOutcome {

    public Answer {
      remarks = List.copyOf(remarks);
    }
  }

  /**
   * No concentration follows from what was read.
   *
   * @param reason why, and what to do
   */
  record NoAnswer(Reason reason) implements AdditionOutcome {}
}
