package org.restpoint.stability.calibration;

/**
 * Why something was refused, for a person.
 *
 * @param code stable, lower case with hyphens
 * @param text what is wrong, with the figures
 * @param remedy what to do
 */
public record Reason(String code, String text, String remedy) {}
