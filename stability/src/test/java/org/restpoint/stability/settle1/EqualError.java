package org.restpoint.stability.settle1;

import java.util.Optional;

/**
 * A candidate beside the best setting of a family that makes no more false settles than it on the
 * same set of curves; where the family has none, beside the one that makes the fewest. Both are run
 * by the rules themselves.
 *
 * @param candidate the candidate's name
 * @param scores the candidate's
 * @param family the family's name
 * @param setting the family's setting
 * @param settingScores its scores
 * @param reached whether it makes as few false settles as the candidate
 */
record EqualError(
    String candidate,
    Scores scores,
    String family,
    String setting,
    Scores settingScores,
    boolean reached) {

  /** On one of the sets that are reported; empty when no setting settles on enough curves. */
  static Optional<EqualError> of(Row row, Family family, int set, Sets sets) {
    Scores scores = Scores.of(row.decisions().get(set));
    Envelope envelope = new Envelope(family.reports().get(set));
    Optional<Swept> equal = envelope.at(scores.overOneMillivolt());
    return equal
        .or(envelope::fewestFalse)
        .map(Swept::candidate)
        .map(
            setting ->
                new EqualError(
                    row.candidate().name(),
                    scores,
                    family.name(),
                    setting.name(),
                    Scores.of(setting, sets.reports().get(set)),
                    equal.isPresent()));
  }

  /** How many times sooner the candidate is, by mean time. */
  double timesSooner() {
    return settingScores.meanSeconds() / scores.meanSeconds();
  }
}
