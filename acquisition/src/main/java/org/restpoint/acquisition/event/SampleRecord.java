package org.restpoint.acquisition.event;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * The record of a sample, kept or corrected. It names people and places, so it is journalled and
 * answered to who gave it, and has no topic of its own.
 *
 * @param id the same for all revisions of the record of one sample
 * @param revision 1, and one more each time it is corrected
 * @param station the station's name
 * @param probe the probe on whose topic it came
 * @param time when it was given
 * @param sample all that is known of the sample from now on
 * @param changed what the revision before had otherwise
 */
public record SampleRecord(
    String id,
    int revision,
    String station,
    String probe,
    Instant time,
    ObjectNode sample,
    List<Change> changed)
    implements Event {

  public SampleRecord {
    changed = List.copyOf(changed);
  }

  /** The id of the record of a sample; no name of a probe, hence no other id, has a colon. */
  public static String idOf(String number) {
    return "sample:" + number;
  }

  /**
   * A field that is otherwise than before.
   *
   * @param field its name
   * @param before what it held; absent where it was not known
   * @param after what it holds; absent where it was removed
   */
  public record Change(String field, Optional<JsonNode> before, Optional<JsonNode> after) {

    /** Read from JSON, what is absent comes as a null of JSON. */
    public Change {
      before = before.filter(value -> !value.isNull());
      after = after.filter(value -> !value.isNull());
    }
  }
}
