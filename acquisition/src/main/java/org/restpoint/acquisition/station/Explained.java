package org.restpoint.acquisition.station;

import java.util.Map;
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
  private final Map<String, Meaning> meanings;

  /**
   * An output before another.
   *
   * @param meanings what results mean, by the probe that gave them
   */
  Explained(Output output, Map<String, Meaning> meanings) {
    this.output = output;
    this.meanings = Map.copyOf(meanings);
  }

  @Override
  public void event(Event event) {
    output.event(explained(event));
  }

  @Override
  public void answer(Answer answer) {
    output.answer(explained(answer));
  }

  @Override
  public void confide(Answer answer) {
    output.confide(explained(answer));
  }

  private Answer explained(Answer answer) {
    Optional<Event> outcome = answer.outcome().map(this::explained);
    return answer.withOutcome(outcome);
  }

  private Event explained(Event event) {
    return event instanceof Result result
        ? Optional.ofNullable(meanings.get(result.probe()))
            .map(meaning -> meaning.explain(result))
            .orElse(result)
        : event;
  }
}
