package org.restpoint.acquisition.probe;

import org.restpoint.acquisition.event.Answer;
import org.restpoint.acquisition.event.Event;

/** Where a routine says what it has to say. */
public interface Output {

  /** Something happened. */
  void event(Event event);

  /** A caller is answered. */
  void answer(Answer answer);

  /** A caller is answered with what nobody else may hear and nothing may keep. */
  void confide(Answer answer);
}
