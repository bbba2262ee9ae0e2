package org.restpoint.stability.settle1;

import java.time.Duration;
import java.util.List;
import org.restpoint.stability.rest.ConsecutiveRule;
import org.restpoint.stability.rest.DriftRule;
import org.restpoint.stability.rest.ForecastRule;

/** The rules that the benchmark runs beside the tuned settings; a line each. */
final class Candidates {

  private Candidates() {}

  /** Settings as they are customary, or as others are compared with: they are reported alone. */
  static List<Candidate> fixed() {
    return List.of(
        Candidate.of(new ConsecutiveRule(10, 0.1)),
        Candidate.of(new ConsecutiveRule(10, 0.2)),
        Candidate.of(new ConsecutiveRule(150, 1)),
        Candidate.of(new ConsecutiveRule(150, 1)).onMediansOfThree(),
        Candidate.of(new DriftRule(0.1, Duration.ofSeconds(75))));
  }

  /** Rules that claim to be sooner: each is held to the best settings of the same error. */
  static List<Candidate> all() {
    return List.of(Candidate.of(new ForecastRule(1)));
  }
}
