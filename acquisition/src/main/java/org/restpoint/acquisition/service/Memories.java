package org.restpoint.acquisition.service;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.HashMap;
import java.util.Map;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.acquisition.probe.ProbeMemory;
import org.restpoint.stability.rest.forecast.ResponseHistory;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** What the routines remember, out of the journal. */
final class Memories {

  private static final Logger LOG = LoggerFactory.getLogger(Memories.class);

  private static final String RESPONSE = "response";

  private Memories() {}

  static Map<String, ProbeMemory> read(Map<String, String> stored) {
    Map<String, ProbeMemory> memories = new HashMap<>();
    stored.forEach((probe, json) -> memories.put(probe, read(probe, json)));
    return memories;
  }

  private static ProbeMemory read(String probe, String json) {
    try {
      JsonNode memory = EventJson.mapper().readTree(json);
      if (memory instanceof ObjectNode fields && !isHistory(probe, fields.path(RESPONSE))) {
        fields.remove(RESPONSE);
      }
      return EventJson.mapper().treeToValue(memory, ProbeMemory.class);
    } catch (JsonProcessingException e) {
      throw new ServiceException(
          "what the journal remembers of probe %s cannot be read: %s. Start with another journal and"
                  .formatted(probe, e.getOriginalMessage())
              + " calibrate again; this one stays as it is");
    }
  }

  /** What another version learnt may be of other response curves; the electrode teaches it anew. */
  private static boolean isHistory(String probe, JsonNode learnt) {
    if (learnt.isMissingNode()) {
      return true;
    }
    try {
      EventJson.mapper().treeToValue(learnt, ResponseHistory.class);
      return true;
    } catch (JsonProcessingException e) {
      LOG.warn(
          "{}: what was learnt of its response cannot be used and is learnt anew: {}",
          probe,
          e.getOriginalMessage());
      return false;
    }
  }
}
