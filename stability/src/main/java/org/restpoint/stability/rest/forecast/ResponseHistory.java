package org.restpoint.stability.rest.forecast;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * What the finished readings of one electrode have taught of its response, and the prior that this
 * gives its next reading. A value: {@code history = history.with(seen)}. Numbers alone.
 *
 * <pre>
 *   n    ← 2^(−1/30)·n + (1 − ε·B)·w           counts of a direction and band
 *   p₁   = (p₀ + K·Σn)/(1 + Σn)                all directions and bands
 *   p₂   = (p₁ + K·Σn)/(1 + Σn)                one direction
 *   p₃   = (2·p₂ + K·Σ½^d·n)/(2 + Σ½^d·n)      one direction and band, d bands away
 *   P    = (1 − ε)·p₃ + ε·p₀                   the prior
 *   B    = Σ w·p₀/P                            evidence for p₀ over P, w the weights of a reading
 *   s    ← max(0, s + ln B);  s &gt; 5: forget
 * </pre>
 *
 * p₀ the uninformed prior; K hands counts on to neighbouring time constants ({@link Neighbours});
 * sums in a numerator by curve, in a denominator over all. Each step of the hierarchy is the
 * posterior mean of a Dirichlet prior about the step before: few readings of one level lean on the
 * direction, few of that on all, and a new electrode on p₀. Bands are 60 mV of resting potential,
 * about a decade. A reading that decides early knows its curve in part only: its weights are soft
 * counts, as in the expectation step of a mixture's fit. A reading of 30 readings ago counts half.
 *
 * <p>B needs no second fit: w ∝ P·L of the likelihood L, so {@code Σ w·p₀/P = Σ p₀·L / Σ P·L}; and
 * ε·B is the posterior share of what was not learnt, so that an odd reading counts for little. s is
 * a cumulative sum that rises while readings are unlikely under what was learnt. ε = 0.05 keeps
 * every curve possible and B at most 20, so one odd reading alone (ln 20 = 3.0) forgets nothing;
 * past s = 5, odds of 150, the electrode is taken for another one (a new membrane), and the history
 * begins anew with the reading that told it, weighed as if nothing had been known. Half-life,
 * widths, ε and threshold are our choice.
 *
 * <p>Edge results: the prior of {@link #empty} is {@link ResponsePrior#uninformed}, so a first
 * reading is as without learning. Bounded: at most {@value #MOST_GROUPS} groups, the lightest goes
 * first; counts of a group add up to less than 44.
 *
 * <p>References: D. J. C. MacKay, L. C. B. Peto, Nat. Lang. Eng. 1 (1995) 289 (hierarchical
 * Dirichlet); E. S. Page, Biometrika 41 (1954) 100, doi 10.1093/biomet/41.1-2.100 (cumulative sum);
 * R. E. Kass, A. E. Raftery, J. Am. Stat. Assoc. 90 (1995) 773, doi 10.1080/01621459.1995.10476572
 * (Bayes factors). All from memory.
 *
 * @param groups what was counted; each direction and band once
 * @param surpriseNepers s, 0 or above
 * @param readings readings since it began, or began anew
 * @param changes how often it began anew because the electrode had changed
 */
public record ResponseHistory(
    List<CurveCounts> groups, double surpriseNepers, long readings, long changes) {

  /** Groups held at most: eight bands in both directions. */
  public static final int MOST_GROUPS = 16;

  private static final double KEPT = Math.pow(2, -1.0 / 30);
  private static final double UNINFORMED = 0.05;
  private static final double OVERALL_READINGS = 1;
  private static final double DIRECTION_READINGS = 1;
  private static final double BAND_READINGS = 2;
  private static final double NEXT_BAND = 0.5;
  private static final double CHANGED_NEPERS = 5;

  public ResponseHistory {
    groups = List.copyOf(groups);
    if (groups.size() > MOST_GROUPS
        || groups.stream().map(CurveCounts::place).distinct().count() < groups.size()) {
      throw new IllegalArgumentException(
          "a history has at most " + MOST_GROUPS + " groups, one a direction and band");
    }
    if (!(surpriseNepers >= 0) || Double.isInfinite(surpriseNepers)) {
      throw new IllegalArgumentException("a surprise is 0 or above, not " + surpriseNepers);
    }
    if (readings < 0 || changes < 0) {
      throw new IllegalArgumentException("readings and changes are counted from 0");
    }
  }

  /** Of an electrode that is new. */
  public static ResponseHistory empty() {
    return new ResponseHistory(List.of(), 0, 0, 0);
  }

  /**
   * The history with one more reading, which was weighed by {@link #prior()} of this one.
   *
   * @param seen what it told, with a finite rest and a weight for each curve
   */
  public ResponseHistory with(ResponseSeen seen) {
    if (seen.weights().size() != Candidates.COUNT || !Double.isFinite(seen.restMillivolts())) {
      throw new IllegalArgumentException(
          "a reading that is learnt from has a rest and weighs " + Candidates.COUNT + " curves");
    }
    List<Double> before = weights(seen);
    double sum = before.stream().mapToDouble(it -> it).sum();
    double[] uninformed = Candidates.uninformed();
    double evidence = 0;
    for (int i = 0; i < uninformed.length; i++) {
      uninformed[i] *= seen.weights().get(i) / (before.get(i) / sum);
      evidence += uninformed[i];
    }
    double surprise = Math.max(0, surpriseNepers + Math.log(evidence));
    if (surprise <= CHANGED_NEPERS) {
      double share = 1 - Math.min(1, UNINFORMED * evidence);
      return new ResponseHistory(counted(seen, share), surprise, readings + 1, changes);
    }
    for (int i = 0; i < uninformed.length; i++) {
      uninformed[i] /= evidence;
    }
    List<Double> anew = ResponsePrior.curveWeights(uninformed);
    int band = CurveCounts.band(seen.restMillivolts());
    List<CurveCounts> first = List.of(CurveCounts.of(band, seen.rising(), anew));
    return new ResponseHistory(first, 0, 1, changes + 1);
  }

  /** What the prior says of curves that rest where a reading did. */
  private List<Double> weights(ResponseSeen seen) {
    List<ResponsePrior.Level> levels = prior().levels();
    int level = 0;
    while (level < levels.size() - 1
        && seen.restMillivolts() > levels.get(level).upToMillivolts()) {
      level++;
    }
    return seen.rising() ? levels.get(level).rising() : levels.get(level).falling();
  }

  private List<CurveCounts> counted(ResponseSeen seen, double share) {
    CurveCounts now =
        CurveCounts.of(CurveCounts.band(seen.restMillivolts()), seen.rising(), seen.weights())
            .aged(share);
    List<CurveCounts> next = new ArrayList<>();
    boolean held = false;
    for (CurveCounts group : groups) {
      CurveCounts aged = group.aged(KEPT);
      boolean same = group.place().equals(now.place());
      held |= same;
      next.add(same ? aged.with(now) : aged);
    }
    if (!held) {
      next.add(now);
    }
    if (next.size() > MOST_GROUPS) {
      next.remove(Collections.min(next, Comparator.comparingDouble(CurveCounts::total)));
    }
    return next;
  }

  /** What is known of the electrode before its next reading. */
  public ResponsePrior prior() {
    if (groups.isEmpty()) {
      return ResponsePrior.uninformed();
    }
    double[] overall = learnt(Candidates.uninformed(), OVERALL_READINGS, group -> 1);
    double[] rising = learnt(overall, DIRECTION_READINGS, group -> group.rising() ? 1 : 0);
    double[] falling = learnt(overall, DIRECTION_READINGS, group -> group.rising() ? 0 : 1);
    List<Integer> bands = groups.stream().map(CurveCounts::band).distinct().sorted().toList();
    List<ResponsePrior.Level> levels = new ArrayList<>();
    for (int i = 0; i < bands.size(); i++) {
      double limit =
          i + 1 < bands.size()
              ? CurveCounts.middleMillivolts(bands.get(i), bands.get(i + 1))
              : Double.POSITIVE_INFINITY;
      int band = bands.get(i);
      levels.add(new ResponsePrior.Level(limit, at(band, true, rising), at(band, false, falling)));
    }
    return new ResponsePrior(levels);
  }

  private List<Double> at(int band, boolean rising, double[] direction) {
    double[] learnt =
        learnt(
            direction,
            BAND_READINGS,
            group ->
                group.rising() == rising ? Math.pow(NEXT_BAND, Math.abs(group.band() - band)) : 0);
    double[] uninformed = Candidates.uninformed();
    for (int i = 0; i < learnt.length; i++) {
      learnt[i] = (1 - UNINFORMED) * learnt[i] + UNINFORMED * uninformed[i];
    }
    return ResponsePrior.curveWeights(learnt);
  }

  /** The mean of a Dirichlet posterior, of all 1. */
  private double[] learnt(double[] before, double alpha, ToDoubleFunction<CurveCounts> share) {
    double[] sums = new double[before.length];
    for (CurveCounts group : groups) {
      group.addTo(sums, share.applyAsDouble(group));
    }
    double[] smooth = Neighbours.smooth(sums);
    double total = alpha;
    for (double count : smooth) {
      total += count;
    }
    for (int i = 0; i < smooth.length; i++) {
      smooth[i] = (alpha * before[i] + smooth[i]) / total;
    }
    return smooth;
  }
}
