package org.restpoint.stability.health;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.restpoint.stability.health.Assessment.Drifting;
import org.restpoint.stability.health.Assessment.Jumped;
import org.restpoint.stability.health.Assessment.NotEnoughHistory;
import org.restpoint.stability.health.Assessment.Steady;

/**
 * Tells steady, drifting and jumped apart.
 *
 * <p>Jumped, which is looked at first: the latest value lies more than {@code jumpDeviations·s}
 * from what those before it let expect. That is the line of Theil and Sen through them where they
 * have a trend, the median of the last {@link Series#BASE} of them where not; s is the largest of
 * 1.4826·MAD about it, the latest value's own uncertainty and the quantity's resolution.
 *
 * <p>Drifting: the chance of Mann and Kendall's test is below {@code significance}. The line of
 * Theil and Sen then tells when it comes to the limit ahead of it: {@code (limit − fitted
 * now)/slope} days, and the same with both ends of the slope's interval, up to {@link
 * #HORIZON_DAYS}.
 *
 * <p>Edge results: fewer than {@code needed} observations, or all at one time, are not enough; a
 * history of values all alike is steady. A step that lasts is a jump at first and, as long as it
 * lies within the observations held, a drift afterwards.
 *
 * <p>Reference: those of {@link MannKendall}, {@link TheilSen} and {@link Baseline}.
 *
 * @param needed the least number of observations, {@link #LEAST_NEEDED} to {@link Series#BASE}
 * @param significance below which chance a trend is one, 0.001 to 0.1
 * @param confidence of the interval of the slope, 0.5 to 0.99
 * @param jumpDeviations how far a jump is, 3 or more
 */
public record HealthRules(
    int needed, double significance, double confidence, double jumpDeviations) {

  /** Below 8 points the median distance tells little, and 99 % of a slope is not known. */
  public static final int LEAST_NEEDED = 8;

  /** Ten years: longer than any membrane lives. */
  public static final double HORIZON_DAYS = 3650;

  /**
   * Our choice. Ten observations; 1 % rather than the common 5 %, because it is asked anew with
   * each calibration; 95 %; five deviations, because MAD of ten values is itself only known within
   * a third: of steady normal values, the common 3.5 (B. Iglewicz, D. C. Hoaglin, How to Detect and
   * Handle Outliers, ASQC 1993) calls 3 % a jump with ten before them and 1 % with twenty, 5 calls
   * 1 % and 0.1 % one (simulated).
   */
  public static final HealthRules USUAL = new HealthRules(10, 0.01, 0.95, 5);

  public HealthRules {
    if (needed < LEAST_NEEDED || needed > Series.BASE) {
      throw new IllegalArgumentException(
          "between " + LEAST_NEEDED + " and " + Series.BASE + " observations are asked for");
    }
    if (!(significance >= 0.001 && significance <= 0.1)) {
      throw new IllegalArgumentException("a significance is 0.001 to 0.1, not " + significance);
    }
    if (!(confidence >= 0.5 && confidence <= 0.99)) {
      throw new IllegalArgumentException("a confidence is 0.5 to 0.99, not " + confidence);
    }
    if (!(jumpDeviations >= 3) || Double.isInfinite(jumpDeviations)) {
      throw new IllegalArgumentException("a jump is 3 deviations or more, not " + jumpDeviations);
    }
  }

  /** Assesses the latest observation of a series and the way it went. */
  public Assessment assess(Series series, HealthLimits limits) {
    List<Observation> seen = series.unbroken();
    Optional<Trend> trend = seen.size() < needed ? Optional.empty() : trend(seen);
    if (trend.isEmpty()) {
      return new NotEnoughHistory(seen.size(), needed);
    }
    Baseline base = Baseline.of(Series.values(series.base()));
    Optional<Assessment> jump = jump(seen, base);
    if (jump.isPresent()) {
      return jump.get();
    }
    Trend went = trend.get();
    if (went.test().chance() >= significance) {
      return new Steady(base, went);
    }
    Projection projection = projection(went, limits, series.latest().time());
    return new Drifting(
        base,
        went,
        projection,
        HealthWords.drifting(series.latest(), base, went, projection, limits));
  }

  private Optional<Trend> trend(List<Observation> seen) {
    double[] days = Series.days(seen);
    double[] values = Series.values(seen);
    MannKendall test = MannKendall.of(days, values);
    return TheilSen.through(days, values, confidence)
        .flatMap(
            line ->
                line.interval()
                    .map(
                        interval ->
                            new Trend(
                                seen.size(),
                                line.slope(),
                                interval.low(),
                                interval.high(),
                                line.at(days[days.length - 1]),
                                test)));
  }

  private Optional<Assessment> jump(List<Observation> seen, Baseline base) {
    Observation latest = seen.get(seen.size() - 1);
    List<Observation> before = seen.subList(0, seen.size() - 1);
    double[] days = Series.days(before);
    double[] values = Series.values(before);
    Optional<TheilSen> line =
        MannKendall.of(days, values).chance() < significance
            ? TheilSen.through(days, values, confidence)
            : Optional.empty();
    double expected;
    double deviation;
    if (line.isPresent()) {
      expected = line.get().at(Series.days(before.get(0).time(), latest.time()));
      for (int i = 0; i < values.length; i++) {
        values[i] -= line.get().at(days[i]);
      }
      deviation = Baseline.of(values).deviation();
    } else {
      List<Observation> last =
          before.subList(Math.max(0, before.size() - Series.BASE), before.size());
      Baseline recent = Baseline.of(Series.values(last));
      expected = recent.median();
      deviation = recent.deviation();
    }
    double scale =
        Math.max(Math.max(deviation, latest.standardUncertainty()), latest.quantity().resolution());
    double deviations = (latest.value() - expected) / scale;
    return Math.abs(deviations) > jumpDeviations
        ? Optional.of(
            new Jumped(
                base,
                latest,
                expected,
                deviations,
                HealthWords.jumped(latest, expected, deviations)))
        : Optional.empty();
  }

  private static Projection projection(Trend trend, HealthLimits limits, Instant now) {
    OptionalDouble limit = limits.ahead(trend.perDay());
    if (limit.isEmpty()) {
      return new Projection.NotInSight();
    }
    double left = limit.getAsDouble() - trend.fittedLatest();
    double days = left / trend.perDay();
    if (!(days > 0)) {
      return new Projection.Reached();
    }
    boolean falling = trend.perDay() < 0;
    double earliest = left / (falling ? trend.lowPerDay() : trend.highPerDay());
    double latest = left / (falling ? trend.highPerDay() : trend.lowPerDay());
    return days > HORIZON_DAYS
        ? new Projection.NotInSight()
        : new Projection.On(
            after(now, days),
            after(now, earliest),
            latest > 0 && latest <= HORIZON_DAYS
                ? Optional.of(after(now, latest))
                : Optional.empty());
  }

  private static Instant after(Instant now, double days) {
    return now.plus(Duration.ofMillis(Math.round(days * Duration.ofDays(1).toMillis())));
  }
}
