package org.restpoint.stability.rest.forecast;

import java.util.ArrayList;
import java.util.List;

/**
 * What the finished readings of one electrode have taught of its response, and the prior that this
 * gives its next reading. A value: {@code history = history.with(seen)}. Numbers alone.
 *
 * <pre>
 *   K    ∝ K₀·e^(0.3·L)                        how likely a kind of curves is
 *   L    ← 2^(−1/30)·L + min(0, ln(B/B*) + 2)   not below −6 a reading
 *   P    = (1 − ε)·K·N(ln τ; m, v) + ε·p₀       the prior of a curve
 *   ε    = 0.05 + 0.3/(1 + n)
 *   c    = 0.04 + 0.03·e^(−n/10)                see {@link ResponsePrior#unforeseen()}
 *   B    = Σ w·p₀/P                            evidence for p₀ over P, w the weights of a reading
 *   s    ← max(0, s + ln B);  s &gt; 5: forget
 * </pre>
 *
 * p₀ and K₀ before any reading; n readings; m, v as in {@link KindTimes}; B of a kind its share of
 * the evidence, B* the largest. A reading tells a kind's time constant by what its weights have
 * become over the prior ({@link KindEvidence}), so that a reading that decided early and told
 * nothing teaches nothing.
 *
 * <p>A kind that explains a reading by no more than 2 nepers less than the best is not held against
 * it: that much its freedom costs a pair of exponentials in each reading, although the electrode
 * has but one slow part. Without this a slow part that is small is unlearnt, the electrode is
 * called at rest before it shows, and no reading ever tells. For the same reason evidence counts
 * with the power 0.3. ε keeps every curve possible and an odd reading from forgetting what was
 * learnt; s is a cumulative sum that rises while readings are unlikely under what was learnt, and
 * past 5, odds of 150, the electrode is taken for another one (a new membrane): the history begins
 * anew with the reading that told it, weighed as if nothing had been known. All thresholds are our
 * choice, tried on invented electrodes.
 *
 * <p>Edge results: the prior of {@link #empty} is {@link ResponsePrior#uninformed}, so a first
 * reading is as without learning. A level beyond those seen counts as the nearest of them.
 *
 * <p>References: E. S. Page, Biometrika 41 (1954) 100, doi 10.1093/biomet/41.1-2.100 (cumulative
 * sum); R. E. Kass, A. E. Raftery, J. Am. Stat. Assoc. 90 (1995) 773, doi
 * 10.1080/01621459.1995.10476572 (Bayes factors). From memory.
 *
 * @param kinds what is known of each kind of curve; none before the first reading
 * @param lowestMillivolts the lowest rest seen; 0 before the first reading
 * @param highestMillivolts the highest
 * @param surpriseNepers s, 0 or above
 * @param readings readings since it began, or began anew
 * @param changes how often it began anew because the electrode had changed
 */
public record ResponseHistory(
    List<KindTimes> kinds,
    double lowestMillivolts,
    double highestMillivolts,
    double surpriseNepers,
    long readings,
    long changes) {

  private static final double KEPT = Math.pow(2, -1.0 / 30);
  private static final double POWER = 0.3;
  private static final double GRANTED_NEPERS = 2;
  private static final double LEAST_NEPERS = -6;
  private static final double UNINFORMED = 0.05;
  private static final double UNINFORMED_AT_FIRST = 0.3;
  private static final double UNFORESEEN = 0.04;
  private static final double UNFORESEEN_READINGS = 10;
  private static final double CHANGED_NEPERS = 5;
  private static final double LEVEL_MILLIVOLTS = 60;
  private static final double WIDTH_MILLIVOLTS = 30;
  private static final int MOST_LEVELS = 12;

  /** Of a kind's evidence to the largest: less than that tells nothing of its times. */
  private static final double TELLING = 1e-6;

  /** 1/v that a reading must add to tell anything. */
  private static final double LEAST_PRECISION = 1e-3;

  public ResponseHistory {
    kinds = List.copyOf(kinds);
    if (kinds.size() != (readings == 0 ? 0 : CurveKinds.COUNT)) {
      throw new IllegalArgumentException(
          "a history knows of "
              + CurveKinds.COUNT
              + " kinds of curves, or of none before its first reading; not of "
              + kinds.size());
    }
    if (!(lowestMillivolts <= highestMillivolts)
        || !Double.isFinite(highestMillivolts - lowestMillivolts)) {
      throw new IllegalArgumentException("the rests seen are from the lowest to the highest");
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
    return new ResponseHistory(List.of(), 0, 0, 0, 0, 0);
  }

  /** Nothing is known any more: the electrode has got a new membrane, or is another one. */
  public ResponseHistory replaced() {
    return new ResponseHistory(List.of(), 0, 0, 0, 0, changes);
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
    double[] likelihood = likelihood(seen);
    double[] uninformed = Candidates.uninformed();
    double evidence = 0;
    for (int i = 0; i < uninformed.length; i++) {
      evidence += uninformed[i] * likelihood[i];
    }
    double surprise = Math.max(0, surpriseNepers + Math.log(evidence));
    if (surprise > CHANGED_NEPERS) {
      return new ResponseHistory(List.of(), 0, 0, 0, 0, changes + 1).learnt(seen, likelihood, 0);
    }
    return learnt(seen, likelihood, surprise);
  }

  /** Likelihoods of the curves, up to a factor: their weights with the prior taken out. */
  private double[] likelihood(ResponseSeen seen) {
    List<ResponsePrior.Level> levels = prior().levels();
    int level = 0;
    while (level < levels.size() - 1
        && seen.restMillivolts() > levels.get(level).upToMillivolts()) {
      level++;
    }
    List<Double> before = seen.rising() ? levels.get(level).rising() : levels.get(level).falling();
    double sum = before.stream().mapToDouble(it -> it).sum();
    double[] likelihood = new double[Candidates.COUNT];
    for (int i = 0; i < likelihood.length; i++) {
      likelihood[i] = seen.weights().get(i) / (before.get(i) / sum);
    }
    return likelihood;
  }

  private ResponseHistory learnt(ResponseSeen seen, double[] likelihood, double surprise) {
    double rest = seen.restMillivolts();
    boolean first = readings == 0;
    double lowest = first ? rest : Math.min(lowestMillivolts, rest);
    double highest = first ? rest : Math.max(highestMillivolts, rest);
    List<KindTimes> known = first ? unknown() : kinds;
    double level = rest / LEVEL_MILLIVOLTS;
    KindEvidence evidence = new KindEvidence(known, seen.rising(), level, likelihood);
    double share = first ? 1 : evidence.share(shares(known), uninformedShare());
    List<KindTimes> next = new ArrayList<>();
    for (int kind = 0; kind < CurveKinds.COUNT; kind++) {
      KindTimes times = known.get(kind);
      double ratio = Math.log(Math.max(evidence.of(kind), Double.MIN_NORMAL) / evidence.largest());
      double held = Math.max(LEAST_NEPERS, Math.min(0, ratio + GRANTED_NEPERS));
      KindTimes counted = times.withLikelihood(KEPT * times.likelihoodNepers() + share * held);
      boolean tells =
          evidence.of(kind) > TELLING * evidence.largest()
              && evidence.precision(kind) > LEAST_PRECISION;
      next.add(tells ? counted.with(seen.rising(), level, evidence.told(kind), share) : counted);
    }
    return new ResponseHistory(next, lowest, highest, surprise, readings + 1, changes);
  }

  private static List<KindTimes> unknown() {
    List<KindTimes> unknown = new ArrayList<>();
    for (int kind = 0; kind < CurveKinds.COUNT; kind++) {
      unknown.add(KindTimes.unknown(kind));
    }
    return unknown;
  }

  private double uninformedShare() {
    return UNINFORMED + UNINFORMED_AT_FIRST / (1 + readings);
  }

  /** K of all kinds. */
  private static double[] shares(List<KindTimes> known) {
    double[] shares = new double[CurveKinds.COUNT];
    double sum = 0;
    for (int kind = 0; kind < shares.length; kind++) {
      shares[kind] =
          CurveKinds.uninformed(kind) * Math.exp(POWER * known.get(kind).likelihoodNepers());
      sum += shares[kind];
    }
    for (int kind = 0; kind < shares.length; kind++) {
      shares[kind] /= sum;
    }
    return shares;
  }

  /** What is known of the electrode before its next reading. */
  public ResponsePrior prior() {
    if (readings == 0) {
      return ResponsePrior.uninformed();
    }
    double width = highestMillivolts - lowestMillivolts;
    int count = (int) Math.max(1, Math.min(MOST_LEVELS, width / WIDTH_MILLIVOLTS));
    List<ResponsePrior.Level> levels = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      double upTo = lowestMillivolts + width * (i + 1) / count;
      double middle = (lowestMillivolts + width * (i + 0.5) / count) / LEVEL_MILLIVOLTS;
      levels.add(
          new ResponsePrior.Level(
              i == count - 1 ? Double.POSITIVE_INFINITY : upTo,
              expected(true, middle),
              expected(false, middle)));
    }
    double before = ResponsePrior.uninformed().unforeseen() - UNFORESEEN;
    return new ResponsePrior(
        levels, UNFORESEEN + before * Math.exp(-readings / UNFORESEEN_READINGS));
  }

  private List<Double> expected(boolean rising, double level) {
    double[] expected = KindEvidence.curves(kinds, rising, level);
    double[] shares = shares(kinds);
    double[] uninformed = Candidates.uninformed();
    double odd = uninformedShare();
    for (int i = 0; i < expected.length; i++) {
      expected[i] = (1 - odd) * shares[CurveKinds.of(i)] * expected[i] + odd * uninformed[i];
    }
    return ResponsePrior.curveWeights(expected);
  }
}
