package org.restpoint.acquisition.service;

import org.restpoint.acquisition.event.Event;

/** Whom the engine tells, on its own thread; no method blocks or throws. */
public interface EngineListener {

  /** Something happened and is in the journal. */
  void happened(Event event);

  /** A message that may be lost is to go out at once. */
  void passing(String topic, String payload);

  /** Messages wait in the outbox. */
  void committed();
}
