package org.restpoint.stability.rest;

import java.util.OptionalDouble;

/**
 * What a rule sees while it waits.
 *
 * @param readings readings taken so far
 * @param latestMillivolts the last of them
 * @param spreadMillivolts largest minus smallest in the rule's window
 * @param driftMillivoltsPerMinute slope of a line through the window; empty with fewer than two
 *     instants
 */
public record RestProgress(
    long readings,
    double latestMillivolts,
    double spreadMillivolts,
    OptionalDouble driftMillivoltsPerMinute) {}
