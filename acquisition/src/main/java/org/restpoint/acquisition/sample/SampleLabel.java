package org.restpoint.acquisition.sample;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Optional;
import org.restpoint.acquisition.event.Result;

/** Puts the record of its sample on a result, with the flags that follow from it. */
public final class SampleLabel {

  private SampleLabel() {}

  /**
   * A result with a record in place of the one it had.
   *
   * @param analyte the ion that was read; empty where that is not known any more, and the flags
   *     stay
   */
  public static Result on(Result result, ObjectNode record, Optional<String> analyte) {
    Result labelled = result.withSample(record);
    if (analyte.isEmpty() || result.outcome() != Result.Outcome.SETTLED) {
      return labelled;
    }
    List<String> flags = HoldingTime.flags(analyte.get(), Sample.of(record), result.time());
    for (String flag : HoldingTime.FLAGS) {
      labelled = flags.contains(flag) ? labelled.withFlag(flag) : labelled.withoutFlag(flag);
    }
    return labelled;
  }
}
