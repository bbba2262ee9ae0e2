package org.restpoint.acquisition.probe;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Optional;

/** What a reading is for. */
sealed interface Purpose {

  /** To calibrate with a standard. */
  record OfStandard(Standard standard) implements Purpose {}

  /** To check the calibration with a standard. */
  record OfCheck(Standard standard) implements Purpose {}

  /** To measure a sample. */
  record OfSample(Optional<ObjectNode> sample) implements Purpose {}

  /** To measure the stream. */
  record OfStream() implements Purpose {}
}
