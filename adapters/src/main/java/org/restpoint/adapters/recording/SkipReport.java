package org.restpoint.adapters.recording;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * Tells of what was skipped in a recording, bounded: the first rejected rows one by one, and in the
 * end how many lines there were of each kind and where the first of them stand.
 */
public final class SkipReport implements Consumer<SkippedLine> {

  private static final int LINES_NAMED = 5;

  private final int most;
  private final Consumer<SkippedLine> told;
  private final Map<Skip, Lines> lines = new EnumMap<>(Skip.class);
  private int tellings;

  /**
   * @param most how many rows are told one by one
   * @param told takes them
   */
  public SkipReport(int most, Consumer<SkippedLine> told) {
    this.most = most;
    this.told = told;
  }

  @Override
  public void accept(SkippedLine line) {
    lines.computeIfAbsent(line.skip(), any -> new Lines()).add(line.line());
    if (line.skip().isRejected() && tellings < most) {
      tellings++;
      told.accept(line);
    }
  }

  /** Whether as many rows have been told as are told one by one. */
  public boolean isFull() {
    return tellings == most;
  }

  /** All that was skipped, by kind; empty when all of it was told one by one. */
  public Optional<String> summary() {
    if (lines.values().stream().mapToLong(kind -> kind.count).sum() == tellings) {
      return Optional.empty();
    }
    List<String> kinds = new ArrayList<>();
    lines.forEach(
        (skip, of) -> kinds.add("%d \u00D7 %s (%s)".formatted(of.count, skip.words(), of)));
    return Optional.of(String.join(", ", kinds));
  }

  /** How many lines there were, and the first of them. */
  private static final class Lines {

    private final List<String> first = new ArrayList<>();
    private long count;

    void add(long line) {
      count++;
      if (first.size() < LINES_NAMED) {
        first.add(String.valueOf(line));
      }
    }

    @Override
    public String toString() {
      return (count == 1 ? "line " : "lines ")
          + String.join(", ", first)
          + (count > first.size() ? ", ..." : "");
    }
  }
}
