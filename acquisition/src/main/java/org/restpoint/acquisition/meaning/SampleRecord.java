package org.restpoint.acquisition.meaning;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Optional;
import org.restpoint.stability.guidance.Depth;

/**
 * What a sample's record says that a table asks about.
 *
 * @param kind what kind of sample it is, where that is said
 * @param depth from where in the soil, where both edges are said and are those of a layer
 */
record SampleRecord(Optional<String> kind, Optional<Depth> depth) {

  static SampleRecord of(ObjectNode sample) {
    JsonNode top = sample.path("depthTopCentimetres");
    JsonNode bottom = sample.path("depthBottomCentimetres");
    boolean layer =
        top.isNumber() && bottom.isNumber() && Depth.isOne(top.doubleValue(), bottom.doubleValue());
    return new SampleRecord(
        Optional.ofNullable(sample.path("kind").textValue()),
        layer ? Optional.of(new Depth(top.doubleValue(), bottom.doubleValue())) : Optional.empty());
  }
}
