package org.restpoint.acquisition.probe;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Optional;

/** What a reading is for. */
sealed interface Purpose {

  /** The record of the sample that is read, where there is one. */
  default Optional<ObjectNode> sample() {
    return Optional.empty();
  }

  /** To calibrate with a standard. */
  record OfStandard(Standard standard) implements Purpose {}

  /** To check results before and after it. */
  record OfCheck(Check check) implements Purpose {
    @Override
    public Optional<ObjectNode> sample() {
      return check.sample();
    }
  }

  /** To measure a sample. */
  record OfSample(Optional<ObjectNode> sample) implements Purpose {}

  /** To measure the stream. */
  record OfStream() implements Purpose {}
}
