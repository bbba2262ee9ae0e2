package org.restpoint.stability.rest;

import java.util.List;

/**
 * At rest as soon as one of some rules says so.
 *
 * <p>The resting potential, its uncertainty and whether it creeps are those of the first rule in
 * the list that holds: the order is the person's, who puts the rule they trust most first.
 *
 * @param rules 2 to 8 rules, combinations among them if wished
 */
public record AnyOf(List<RestRule> rules) implements RestRule {

  public AnyOf {
    rules = Combination.checked(rules);
  }

  @Override
  public RestDetector detector(double slopeMillivoltsPerDecade) {
    return new Combination(rules, slopeMillivoltsPerDecade, false);
  }

  @Override
  public String describe() {
    return "any of " + Combination.describe(rules);
  }

  /** The widest of theirs: within it one of them is still at rest. */
  @Override
  public double restBandMillivolts(double slopeMillivoltsPerDecade) {
    double widest = 0;
    for (RestRule rule : rules) {
      widest = Math.max(widest, rule.restBandMillivolts(slopeMillivoltsPerDecade));
    }
    return widest;
  }
}
