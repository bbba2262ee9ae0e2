package org.restpoint.acquisition.batch;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.restpoint.acquisition.event.BatchSummary;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.instruction.Cup;

/**
 * Draws up what came of a batch.
 *
 * @param station the station's name
 * @param probe the probe's name
 * @param results the latest revision of a result by its id, where it is kept
 */
public record Summary(String station, String probe, Function<String, Optional<Result>> results) {

  /** What came of a batch that is ended now. */
  public BatchSummary of(Batch batch, String id, Instant time) {
    List<BatchSummary.Cup> cups = new ArrayList<>();
    List<String> left = new ArrayList<>();
    for (int i = 0; i < batch.cups().size(); i++) {
      Cup cup = batch.cups().get(i);
      if (i < batch.outcomes().size()) {
        cups.add(latest(batch.outcomes().get(i)));
      } else {
        cups.add(BatchSummary.Cup.unread(cup.name(), cup.holds()));
        left.add(cup.name());
      }
    }
    return new BatchSummary(id, station, probe, time, batch.begun(), cups, left);
  }

  /** A cup with the flags that its result bears by now: later readings may have changed them. */
  private BatchSummary.Cup latest(BatchSummary.Cup cup) {
    return cup.result().flatMap(results).map(result -> cup.flagged(result.flags())).orElse(cup);
  }
}
