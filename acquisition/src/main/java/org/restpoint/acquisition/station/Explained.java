package org.restpoint.acquisition.station;

import java.util.Optional;
import org.restpoint.acquisition.event.Answer;
import org.restpoint.acquisition.event.Event;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.meaning.Meaning;
import org.restpoint.acquisition.probe.Output;

/**
 * Adds to every result on its way out what it means. So a result that is said again, with another
 * record of its sample, another number or another flag, says what it means then.
 */
final class Explained implements Output {

  private final Output output;
  private final Meaning meaning;

  Explained(Output output, Meaning meaning) {
    this.output = output;
    this.meaning = meaning;
  }

  @Override
  public void event(Event event) {
    output.event(explained(event));
  }

  @Override
  public void answer(Answer answer) {
    Optional<Event> outcome = answer.outcome().map(this::explained);
    output.answer(
        new Answer(
            answer.id(),
            answer.station(),
            answer.probe(),
            answer.time(),
            answer.instruction(),
            answer.verdict(),
            answer.reasons(),
            outcome));
  }

  private Event explained(Event event) {
    return event instanceof Result result ? meaning.explain(result) : event;
  }
}
