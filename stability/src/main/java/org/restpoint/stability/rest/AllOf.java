package org.restpoint.stability.rest;

import java.util.List;

/**
 * At rest when every one of some rules says so with the same reading.
 *
 * <p>The resting potential is that of the rule whose uncertainty is the smallest; of several alike,
 * the first in the list. All rules hold, so each of their potentials may be taken, with its own
 * uncertainty. Each stays within its own window, so none is made better by the others.
 *
 * <p>It creeps when every rule sees it creep: one that has looked long enough to say that it does
 * not, or whose limit of drift is met, is believed.
 *
 * @param rules 2 to 8 rules, combinations among them if wished
 */
public record AllOf(List<RestRule> rules) implements RestRule {

  public AllOf {
    rules = Combination.checked(rules);
  }

  @Override
  public RestDetector detector(double slopeMillivoltsPerDecade) {
    return new Combination(rules, slopeMillivoltsPerDecade, true);
  }

  @Override
  public String describe() {
    return "all of " + Combination.describe(rules);
  }

  /** The narrowest of theirs: outside it one of them is no longer at rest. */
  @Override
  public double restBandMillivolts(double slopeMillivoltsPerDecade) {
    double narrowest = Double.POSITIVE_INFINITY;
    for (RestRule rule : rules) {
      narrowest = Math.min(narrowest, rule.restBandMillivolts(slopeMillivoltsPerDecade));
    }
    return narrowest;
  }
}
