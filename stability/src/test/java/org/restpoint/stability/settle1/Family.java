package org.restpoint.stability.settle1;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * All settings of one kind of rule, swept on the tuning set and on each set that is reported.
 *
 * @param name its name in tables
 * @param tuning on the tuning set
 * @param reports on the sets that are reported, in their order, settings in the same order
 */
record Family(String name, List<Swept> tuning, List<List<Swept>> reports) {

  static Family sweep(String name, Function<List<Curve>, List<Swept>> sweep, Sets sets) {
    List<List<Swept>> reports = new ArrayList<>();
    for (List<Curve> report : sets.reports()) {
      reports.add(sweep.apply(report));
    }
    return new Family(name, sweep.apply(sets.tuning()), reports);
  }

  /** The settings of two. */
  Family and(Family other, String both) {
    return new Family(
        both,
        Stream.concat(tuning.stream(), other.tuning.stream()).toList(),
        IntStream.range(0, reports.size())
            .mapToObj(i -> Stream.concat(reports.get(i).stream(), other.reports.get(i).stream()))
            .map(Stream::toList)
            .toList());
  }

  /** Each setting's mean over the sets that are reported. */
  List<Swept> mean() {
    return IntStream.range(0, tuning.size())
        .mapToObj(i -> Swept.mean(reports.stream().map(report -> report.get(i)).toList()))
        .toList();
  }
}
