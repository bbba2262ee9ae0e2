package org.restpoint.stability.rest;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** {@link AllOf} or {@link AnyOf} at work: every reading goes to every rule. */
final class Combination implements RestDetector {

  private static final int FEWEST = 2;
  private static final int MOST = 8;

  private final List<RestRule> rules;
  private final boolean all;
  private final RestDetector[] detectors;
  private final boolean[] holds;
  private int holding;
  private boolean begun;

  Combination(List<RestRule> rules, double slopeMillivoltsPerDecade, boolean all) {
    this.rules = rules;
    this.all = all;
    this.detectors = new RestDetector[rules.size()];
    for (int i = 0; i < detectors.length; i++) {
      detectors[i] = rules.get(i).detector(slopeMillivoltsPerDecade);
    }
    this.holds = new boolean[detectors.length];
  }

  static List<RestRule> checked(List<RestRule> rules) {
    if (rules.size() < FEWEST || rules.size() > MOST) {
      throw new IllegalArgumentException("a combination is of 2 to 8 rules, not " + rules.size());
    }
    return List.copyOf(rules);
  }

  static String describe(List<RestRule> rules) {
    return rules.stream().map(RestRule::describe).collect(Collectors.joining(", ", "(", ")"));
  }

  @Override
  public boolean accept(long nanos, double millivolts) {
    begun = true;
    holding = 0;
    for (int i = 0; i < detectors.length; i++) {
      holds[i] = detectors[i].accept(nanos, millivolts);
      if (holds[i]) {
        holding++;
      }
    }
    return atRest();
  }

  private boolean atRest() {
    return all ? holding == detectors.length : holding > 0;
  }

  /**
   * At rest the numbers are those of the rule whose potential is taken; before, of the first that
   * does not hold yet, which is the one that is waited for.
   */
  @Override
  public RestProgress progress() {
    if (!begun) {
      throw new IllegalStateException("no reading yet");
    }
    List<RestProgress.Member> members = new ArrayList<>();
    for (int i = 0; i < detectors.length; i++) {
      members.add(new RestProgress.Member(rules.get(i).describe(), detectors[i].progress()));
    }
    boolean atRest = atRest();
    RestProgress shown = members.get(atRest ? chosen() : first(false)).progress();
    return new RestProgress(
        atRest,
        shown.readings(),
        shown.latestMillivolts(),
        shown.spreadMillivolts(),
        shown.drift(),
        atRest ? potential().creeping() : shown.creeping(),
        shown.forecast(),
        members);
  }

  @Override
  public RestingPotential potential() {
    if (!atRest()) {
      throw new IllegalStateException("not at rest");
    }
    RestingPotential taken = detectors[chosen()].potential();
    return new RestingPotential(
        taken.millivolts(),
        taken.standardUncertaintyMillivolts(),
        taken.forecast(),
        taken.spreadMillivolts(),
        taken.drift(),
        all ? allCreep() : taken.creeping());
  }

  private boolean allCreep() {
    for (RestDetector detector : detectors) {
      if (!detector.potential().creeping()) {
        return false;
      }
    }
    return true;
  }

  /** The place of the rule whose potential is taken; only at rest. */
  private int chosen() {
    if (!all) {
      return first(true);
    }
    int best = 0;
    double smallest = Double.POSITIVE_INFINITY;
    for (int i = 0; i < detectors.length; i++) {
      double uncertainty = detectors[i].potential().standardUncertaintyMillivolts();
      if (uncertainty < smallest) {
        smallest = uncertainty;
        best = i;
      }
    }
    return best;
  }

  private int first(boolean held) {
    int i = 0;
    while (holds[i] != held) {
      i++;
    }
    return i;
  }
}
