package org.restpoint.acquisition.event;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.restpoint.stability.calibration.Reason;

/**
 * What a caller hears of an instruction: first whether it was taken, then how it ended.
 *
 * @param id the caller's own id, where the instruction carried one
 * @param station the station's name
 * @param probe the probe's name
 * @param time when
 * @param instruction the instruction's word
 * @param verdict taken, refused or done
 * @param reasons why it was refused
 * @param outcome what came of it, once done
 */
public record Answer(
    Optional<String> id,
    String station,
    String probe,
    Instant time,
    @JsonProperty("do") String instruction,
    Verdict verdict,
    List<Reason> reasons,
    Optional<Event> outcome) {

  /** How far an instruction has come. */
  public enum Verdict {
    /** It has begun; another answer follows when it ends. */
    @JsonProperty("accepted")
    ACCEPTED,
    /** It was not done. */
    @JsonProperty("refused")
    REFUSED,
    /** It has ended. */
    @JsonProperty("done")
    DONE
  }
}
