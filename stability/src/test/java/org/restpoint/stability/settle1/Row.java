package org.restpoint.stability.settle1;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;

/**
 * What one rule made of the sets that are reported.
 *
 * @param candidate the rule
 * @param decisions by set and curve
 */
record Row(Candidate candidate, List<List<Decision>> decisions) {

  static Row of(Candidate candidate, Sets sets) {
    return new Row(candidate, sets.reports().stream().map(candidate::decide).toList());
  }

  /** One a set. */
  List<Scores> scores() {
    return decisions.stream().map(Scores::of).toList();
  }

  /** Of all sets together, the curves of one model alone. */
  Scores of(Model model, Sets sets) {
    return Scores.of(where(curve -> curve.model() == model, sets));
  }

  /** All decisions together. */
  List<Decision> all() {
    return decisions.stream().flatMap(List::stream).toList();
  }

  private List<Decision> where(Predicate<Curve> wanted, Sets sets) {
    List<Decision> found = new ArrayList<>();
    for (int i = 0; i < decisions.size(); i++) {
      for (int j = 0; j < decisions.get(i).size(); j++) {
        if (wanted.test(sets.reports().get(i).get(j))) {
          found.add(decisions.get(i).get(j));
        }
      }
    }
    return found;
  }
}
