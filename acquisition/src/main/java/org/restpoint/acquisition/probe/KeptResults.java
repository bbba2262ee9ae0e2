package org.restpoint.acquisition.probe;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.event.SampleRecord;

/** The latest revision of each result and of each sample's record that it was given, in memory. */
public final class KeptResults implements Archive {

  private final Map<String, Result> latest = new LinkedHashMap<>();
  private final Map<String, SampleRecord> records = new LinkedHashMap<>();

  /** Keeps a result in place of its earlier revision. */
  public void keep(Result result) {
    latest.put(result.id(), result);
  }

  /** Keeps a record in place of its earlier revision. */
  public void keep(SampleRecord record) {
    records.put(record.id(), record);
  }

  @Override
  public Optional<Result> result(String id) {
    return Optional.ofNullable(latest.get(id));
  }

  @Override
  public List<Result> resultsOf(String sampleNumber) {
    return latest.values().stream()
        .filter(result -> result.isOf(sampleNumber))
        .sorted(Comparator.comparing(Result::time))
        .toList();
  }

  @Override
  public Optional<SampleRecord> record(String sampleNumber) {
    return Optional.ofNullable(records.get(SampleRecord.idOf(sampleNumber)));
  }

  @Override
  public Erased forget(String sampleNumber) {
    int before = latest.size();
    latest.values().removeIf(result -> result.isOf(sampleNumber));
    boolean recorded = records.remove(SampleRecord.idOf(sampleNumber)) != null;
    return new Erased(
        before - latest.size(), 0, 0, recorded ? 1 : 0, Set.of(), true, Optional.empty());
  }
}
