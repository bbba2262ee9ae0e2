package org.restpoint.acquisition.workday;

import java.time.Instant;

/** One thing that happens in the course of the day. */
sealed interface Moment {

  Instant time();

  /** The meter sends a reading. */
  record Read(Instant time, double millivolts) implements Moment {

    /** As a row of a recording. */
    String row() {
      return "%s,%s,%s,%s".formatted(time, Workday.PROBE, millivolts, MadeElectrode.CELSIUS);
    }

    /** As a message. */
    String message() {
      return "{\"mv\":%s,\"t\":%s}".formatted(millivolts, MadeElectrode.CELSIUS);
    }
  }

  /** Somebody gives an instruction. */
  record Told(Instant time, String fields) implements Moment {

    /** As a line beside a recording. */
    String line() {
      return "{\"time\":\"%s\",\"probe\":\"%s\",%s}".formatted(time, Workday.PROBE, fields);
    }

    /** As a message; it has no time, because the day is faster than the clock on the wall. */
    String message(String id) {
      return "{\"id\":\"%s\",%s}".formatted(id, fields);
    }
  }

  /** The power fails. */
  record PowerCut(Instant time) implements Moment {}

  /** The power is back. */
  record PowerBack(Instant time) implements Moment {}
}
