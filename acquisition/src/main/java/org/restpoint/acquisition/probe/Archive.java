package org.restpoint.acquisition.probe;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.event.SampleRecord;

/** What a station has published and been told before, as its journal or a replay keeps it. */
public interface Archive {

  /** The latest revision of a result that an instruction asked for; empty where none is kept. */
  Optional<Result> result(String id);

  /** The latest revision of each result of a sample, by any probe, in the order of their times. */
  List<Result> resultsOf(String sampleNumber);

  /** The latest revision of a sample's record; empty where none is kept. */
  Optional<SampleRecord> record(String sampleNumber);

  /** Takes all that is kept of a sample out for good. */
  Erased forget(String sampleNumber);

  /**
   * The latest settled result of a sample itself, not of a check that was made with it; empty where
   * none is kept.
   *
   * @param probe the probe that measured it
   * @param number the sample's number
   * @param from results before that do not count
   */
  default Optional<Result> latestOfSample(String probe, String number, Instant from) {
    return resultsOf(number).stream()
        .filter(result -> result.probe().equals(probe))
        .filter(result -> result.concentration().isPresent() && result.verification().isEmpty())
        .filter(result -> !result.time().isBefore(from))
        .reduce((earlier, later) -> later);
  }

  /** One that keeps nothing. */
  static Archive empty() {
    return new KeptResults();
  }
}
