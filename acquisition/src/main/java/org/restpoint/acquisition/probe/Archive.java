package org.restpoint.acquisition.probe;

import java.time.Instant;
import java.util.Optional;
import org.restpoint.acquisition.event.Result;

/** What a station has published before, as its journal or a replay keeps it. */
public interface Archive {

  /** The latest revision of a result that an instruction asked for; empty where none is kept. */
  Optional<Result> result(String id);

  /**
   * The latest settled result of a sample itself, not of a check that was made with it; empty where
   * none is kept.
   *
   * @param probe the probe that measured it
   * @param number the sample's number
   * @param from results before that do not count
   */
  Optional<Result> latestOfSample(String probe, String number, Instant from);

  /** Whether a result is a sample's own, as {@link #latestOfSample} asks for it. */
  static boolean isOfSample(Result result, String probe, String number, Instant from) {
    return result.probe().equals(probe)
        && result.concentration().isPresent()
        && result.verification().isEmpty()
        && !result.time().isBefore(from)
        && result.sample().filter(of -> number.equals(of.path("number").textValue())).isPresent();
  }

  /** One that keeps nothing. */
  static Archive empty() {
    return new KeptResults();
  }
}
