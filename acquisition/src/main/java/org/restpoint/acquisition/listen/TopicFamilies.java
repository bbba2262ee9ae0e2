package org.restpoint.acquisition.listen;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Finds topics that differ in one level alone and say the same: one filter with {@code +} each. */
final class TopicFamilies {

  private TopicFamilies() {}

  /**
   * The filters, each of two topics at least, and no topic in two of them; the filter with the most
   * topics first.
   */
  static List<String> of(List<TopicHeard> topics) {
    Map<String, List<TopicHeard>> fitting = new HashMap<>();
    for (TopicHeard heard : topics) {
      String[] levels = heard.topic().split("/", -1);
      for (int open = 0; open < levels.length && levels.length > 1; open++) {
        String[] filter = levels.clone();
        filter[open] = "+";
        fitting.computeIfAbsent(String.join("/", filter), any -> new ArrayList<>()).add(heard);
      }
    }
    List<String> filters =
        fitting.entrySet().stream()
            .filter(family -> family.getValue().size() > 1)
            .filter(
                family ->
                    family.getValue().stream().map(TopicHeard::likeness).distinct().count() == 1)
            .sorted(
                Map.Entry.<String, List<TopicHeard>>comparingByValue(
                        (one, other) -> Integer.compare(other.size(), one.size()))
                    .thenComparing(Map.Entry.comparingByKey()))
            .map(Map.Entry::getKey)
            .toList();
    List<String> kept = new ArrayList<>();
    for (String filter : filters) {
      boolean taken =
          topics.stream()
              .filter(heard -> fits(filter, heard.topic()))
              .anyMatch(heard -> kept.stream().anyMatch(other -> fits(other, heard.topic())));
      if (!taken) {
        kept.add(filter);
      }
    }
    return kept;
  }

  /** Whether a topic fits a filter with {@code +}. */
  static boolean fits(String filter, String topic) {
    String[] open = filter.split("/", -1);
    String[] levels = topic.split("/", -1);
    boolean fits = open.length == levels.length;
    for (int i = 0; fits && i < open.length; i++) {
      fits = open[i].equals("+") || open[i].equals(levels[i]);
    }
    return fits;
  }

  /** What stands in a topic where the filter is open. */
  static String captured(String filter, String topic) {
    return topic.split("/", -1)[List.of(filter.split("/", -1)).indexOf("+")];
  }
}
