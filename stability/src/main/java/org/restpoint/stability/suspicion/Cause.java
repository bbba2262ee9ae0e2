package org.restpoint.stability.suspicion;

/**
 * Why a standard may read off.
 *
 * @param suspect what may be wrong
 * @param weight how much it is believed, beside other causes of the same reading; no probability
 * @param evidence what speaks for it, with its figures
 * @param remedy what to do
 */
public record Cause(Suspect suspect, double weight, String evidence, String remedy) {}
