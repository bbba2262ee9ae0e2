package org.restpoint.acquisition.event;

import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.databind.node.ObjectNode;
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
 * @param cup the cup of a batch that it is about, as the list has it
 */
public record Answer(
    Optional<String> id,
    String station,
    String probe,
    Instant time,
    @JsonProperty("do") String instruction,
    Verdict verdict,
    List<Reason> reasons,
    Optional<Event> outcome,
    Optional<ObjectNode> cup) {

  /** An answer that is about no cup. */
  public Answer(
      Optional<String> id,
      String station,
      String probe,
      Instant time,
      String instruction,
      Verdict verdict,
      List<Reason> reasons,
      Optional<Event> outcome) {
    this(id, station, probe, time, instruction, verdict, reasons, outcome, Optional.empty());
  }

  /** The same with another outcome. */
  public Answer withOutcome(Optional<Event> other) {
    return new Answer(id, station, probe, time, instruction, verdict, reasons, other, cup);
  }

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
