package org.restpoint.acquisition.demo;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import java.util.Optional;
import org.restpoint.acquisition.event.Answer;
import org.restpoint.acquisition.event.Event;
import org.restpoint.acquisition.event.EventJson;

/**
 * A message heard on a topic of the probe. Anybody may write there, so what is neither an event nor
 * an answer of the station is passed over.
 *
 * @param event the event, if it is one
 * @param answer the answer, if it is one
 */
record Said(Optional<Event> event, Optional<Answer> answer) {

  private static final Said NOTHING = new Said(Optional.empty(), Optional.empty());

  static Said of(String text) {
    try {
      JsonNode message = EventJson.mapper().readTree(text);
      if (message.has("event")) {
        Event event = EventJson.mapper().treeToValue(message, Event.class);
        return new Said(Optional.of(event), Optional.empty());
      }
      if (message.has("verdict")) {
        Answer answer = EventJson.mapper().treeToValue(message, Answer.class);
        return new Said(Optional.empty(), Optional.of(answer));
      }
    } catch (JsonProcessingException e) {
      // Somebody else wrote on the topic: the station's own words can be read back.
    }
    return NOTHING;
  }

  /**
   * The answer to the instruction with an id. An instruction that was sent twice is answered twice,
   * and the answer to the first is the one that counts.
   */
  Optional<Answer> answerTo(String id) {
    return answer
        .filter(given -> given.id().filter(id::equals).isPresent())
        .filter(
            given ->
                given.reasons().stream()
                    .noneMatch(why -> why.code().equals("instruction-repeated")));
  }
}
