package org.restpoint.stability.quality;

import java.util.Optional;
import org.restpoint.stability.calibration.Reason;

/**
 * How much was found of what was there.
 *
 * @param percent found in percent of expected
 * @param standardUncertaintyPercent its standard uncertainty, k = 1, in percent of expected
 * @param limits what it was held against
 * @param withinLimits whether the figure alone, without its uncertainty, lies within the limits
 * @param verdict what it says with its uncertainty
 * @param reason why it did not pass, and what to do; empty where it passed
 */
public record Recovery(
    double percent,
    double standardUncertaintyPercent,
    RecoveryLimits limits,
    boolean withinLimits,
    Verdict verdict,
    Optional<Reason> reason) {}
