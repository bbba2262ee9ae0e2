package org.restpoint.stability.health;

/**
 * How a quantity went over the observations that no dropped one lies between.
 *
 * @param points how many observations
 * @param perDay slope by Theil and Sen, in the quantity's unit per day
 * @param lowPerDay lower end of its interval
 * @param highPerDay upper end of its interval
 * @param fittedLatest the line at the time of the latest observation
 * @param test whether there is a trend at all
 */
public record Trend(
    int points,
    double perDay,
    double lowPerDay,
    double highPerDay,
    double fittedLatest,
    MannKendall test) {}
