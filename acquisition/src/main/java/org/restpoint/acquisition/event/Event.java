package org.restpoint.acquisition.event;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import java.time.Instant;

/**
 * Something the service says about a probe. Its JSON form ({@link EventJson}) is the same on the
 * message topics, in the journal and in the lines of a replay.
 */
@JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "event")
@JsonSubTypes({
  @JsonSubTypes.Type(value = Result.class, name = "result"),
  @JsonSubTypes.Type(value = Calibration.class, name = "calibration"),
  @JsonSubTypes.Type(value = Notice.class, name = "notice"),
  @JsonSubTypes.Type(value = State.class, name = "state"),
  @JsonSubTypes.Type(value = BatchSummary.class, name = "batch"),
  @JsonSubTypes.Type(value = Progress.class, name = "settling"),
  @JsonSubTypes.Type(value = RawReading.class, name = "reading"),
  @JsonSubTypes.Type(value = SampleRecord.class, name = "sample"),
  @JsonSubTypes.Type(value = Forgotten.class, name = "forgotten")
})
public sealed interface Event
    permits Result,
        Calibration,
        Notice,
        State,
        BatchSummary,
        Progress,
        RawReading,
        SampleRecord,
        Forgotten {

  /** The probe it is about. */
  String probe();

  /** When it came to be. */
  Instant time();
}
