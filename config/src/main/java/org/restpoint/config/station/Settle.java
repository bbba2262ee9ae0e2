package org.restpoint.config.station;

import java.time.Duration;

/**
 * When a potential is at rest.
 *
 * @param rule how it is decided
 * @param notBefore no decision earlier than this after the instruction
 * @param giveUpAfter the reading is unsettled when no decision came by then
 */
public record Settle(SettleRule rule, Duration notBefore, Duration giveUpAfter) {}
