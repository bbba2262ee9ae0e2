package org.restpoint.acquisition.probe;

import java.time.Instant;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.restpoint.acquisition.event.Result;

/** The latest revision of each result that it was given, in memory. */
public final class KeptResults implements Archive {

  private final Map<String, Result> latest = new LinkedHashMap<>();

  /** Keeps a result in place of its earlier revision. */
  public void keep(Result result) {
    latest.put(result.id(), result);
  }

  @Override
  public Optional<Result> result(String id) {
    return Optional.ofNullable(latest.get(id));
  }

  @Override
  public Optional<Result> latestOfSample(String probe, String number, Instant from) {
    return latest.values().stream()
        .filter(result -> Archive.isOfSample(result, probe, number, from))
        .max(Comparator.comparing(Result::time));
  }
}
