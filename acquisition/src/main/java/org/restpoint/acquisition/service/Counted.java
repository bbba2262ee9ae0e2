package org.restpoint.acquisition.service;

import java.util.function.Consumer;
import org.restpoint.acquisition.event.Calibration;
import org.restpoint.acquisition.event.Event;
import org.restpoint.acquisition.event.Notice;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.metrics.Metrics;
import org.restpoint.adapters.mqtt.OutboxPublisher;

/**
 * Passes on what the engine tells: to the publisher, to the metrics, and to a witness.
 *
 * @param publisher sends
 * @param metrics counts
 * @param witness listens
 */
record Counted(OutboxPublisher publisher, Metrics metrics, Consumer<Event> witness)
    implements EngineListener {

  @Override
  public void happened(Event event) {
    if (event instanceof Result result && result.revision() > 1) {
      // It was counted when it was read.
    } else if (event instanceof Result result) {
      metrics.result(result.probe(), result.outcome());
      if (result.outcome() == Result.Outcome.SETTLED) {
        metrics.settled(result.probe(), result.elapsedSeconds());
      }
    } else if (event instanceof Calibration calibration) {
      metrics.calibration(
          calibration.probe(), calibration.verdict() == Calibration.Verdict.ACCEPTED);
    } else if (event instanceof Notice notice) {
      metrics.notice(notice.probe(), notice.code());
    }
    witness.accept(event);
  }

  @Override
  public void passing(String topic, String payload) {
    publisher.publishTransient(topic, payload);
  }

  @Override
  public void committed() {
    publisher.wake();
  }
}
