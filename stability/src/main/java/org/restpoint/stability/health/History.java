package org.restpoint.stability.health;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * All that was seen of one electrode. A value: {@code history = history.accept(observation)}.
 *
 * <p>Bounded: at most {@link #LARGEST} series. When another one begins, the one that was fed
 * longest ago goes, and its observations are counted: accepted = held + dropped.
 *
 * @param series in the order they were begun
 * @param forgotten how many observations went with series that had to go, 0 or above
 */
public record History(List<Series> series, long forgotten) {

  /** Our choice: four quantities in a dozen standards, and room. */
  public static final int LARGEST = 64;

  public History {
    series = List.copyOf(series);
    if (series.size() > LARGEST || forgotten < 0) {
      throw new IllegalArgumentException("a history holds at most " + LARGEST + " series");
    }
  }

  /** Of an electrode that is new. */
  public static History empty() {
    return new History(List.of(), 0);
  }

  /** The history with one more. */
  public History accept(Observation observation) {
    List<Series> next = new ArrayList<>(series);
    for (int i = 0; i < next.size(); i++) {
      if (next.get(i).takes(observation)) {
        next.set(i, next.get(i).accept(observation));
        return new History(next, forgotten);
      }
    }
    long gone = forgotten;
    if (next.size() == LARGEST) {
      Series oldest =
          next.stream().min(Comparator.comparing((Series s) -> s.latest().time())).orElseThrow();
      next.remove(oldest);
      gone += oldest.observations().size() + oldest.dropped();
    }
    next.add(Series.of(observation));
    return new History(next, gone);
  }

  /** The series an observation would be compared with, if there is one. */
  public Optional<Series> like(Observation observation) {
    return series.stream().filter(s -> s.takes(observation)).findFirst();
  }

  /** How many observations are held. */
  public long held() {
    return series.stream().mapToLong(s -> s.observations().size()).sum();
  }

  /** How many were dropped, out of full series and with series that went. */
  public long dropped() {
    return forgotten + series.stream().mapToLong(Series::dropped).sum();
  }
}
