package org.restpoint.acquisition.event;

import java.time.Instant;

/**
 * What went wrong or needs care.
 *
 * @param id stable over redelivery
 * @param station the station's name
 * @param probe the probe's name
 * @param time when
 * @param code stable, lower case with hyphens
 * @param text what happened and where
 * @param remedy what to do; empty when there is nothing to do
 */
public record Notice(
    String id, String station, String probe, Instant time, String code, String text, String remedy)
    implements Event {}
