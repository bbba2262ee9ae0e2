package org.restpoint.acquisition.probe;

import java.time.Instant;
import java.util.function.UnaryOperator;
import org.restpoint.acquisition.event.Result;

/**
 * Says results again.
 *
 * @param archive keeps what was said
 * @param output says it
 */
public record Revision(Archive archive, Output output) {

  /**
   * Says a result again as its next revision, changed; of one that is not kept any more, or that
   * the change leaves as it is, nothing is said.
   *
   * @param because what made it so, in plain words
   */
  public void revise(Instant time, String id, String because, UnaryOperator<Result> change) {
    archive
        .result(id)
        .ifPresent(
            before -> {
              Result after = change.apply(before);
              if (!after.equals(before)) {
                output.event(after.again(time, because));
              }
            });
  }
}
