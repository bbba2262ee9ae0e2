package org.restpoint.acquisition.probe;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Optional;
import org.restpoint.acquisition.check.CheckPlan.SpikeTerms;
import org.restpoint.acquisition.event.Result;

/** What is read to check other results. */
sealed interface Check {

  /** Where the electrode stands, for a person. */
  String place();

  /** The record of the sample it is a portion of. */
  default Optional<ObjectNode> sample() {
    return Optional.empty();
  }

  /** A known solution. */
  record OfStandard(Standard standard) implements Check {
    @Override
    public String place() {
      return "standard " + standard.name();
    }
  }

  /** A sample of nothing. */
  record OfBlank() implements Check {
    @Override
    public String place() {
      return "the blank";
    }
  }

  /** Another portion of a sample that gave a result before. */
  record OfDuplicate(Result former) implements Check {
    @Override
    public String place() {
      return "the other portion of the sample";
    }

    @Override
    public Optional<ObjectNode> sample() {
      return former.sample();
    }
  }

  /** The same with something added. */
  record OfSpike(Result former, SpikeTerms spike) implements Check {
    @Override
    public String place() {
      return "the spiked portion of the sample";
    }

    @Override
    public Optional<ObjectNode> sample() {
      return former.sample();
    }
  }
}
