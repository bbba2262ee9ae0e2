package org.restpoint.acquisition.service;

import com.fasterxml.jackson.core.JsonProcessingException;
import java.util.HashMap;
import java.util.Map;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.acquisition.probe.ProbeMemory;

/** What the routines remember, out of the journal. */
final class Memories {

  private Memories() {}

  static Map<String, ProbeMemory> read(Map<String, String> stored) {
    Map<String, ProbeMemory> memories = new HashMap<>();
    stored.forEach((probe, json) -> memories.put(probe, read(probe, json)));
    return memories;
  }

  private static ProbeMemory read(String probe, String json) {
    try {
      return EventJson.mapper().readValue(json, ProbeMemory.class);
    } catch (JsonProcessingException e) {
      throw new ServiceException(
          "what the journal remembers of probe %s cannot be read: %s. Start with another journal and"
                  .formatted(probe, e.getOriginalMessage())
              + " calibrate again; this one stays as it is");
    }
  }
}
