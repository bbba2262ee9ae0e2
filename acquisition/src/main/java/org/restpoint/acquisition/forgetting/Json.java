package org.restpoint.acquisition.forgetting;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import org.restpoint.acquisition.event.EventJson;

/** Reads what the journal keeps. */
final class Json {

  private Json() {}

  static JsonNode read(String json) {
    try {
      return EventJson.mapper().readTree(json);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("the journal keeps JSON of our own", e);
    }
  }
}
