package org.restpoint.stability.preparation;

/**
 * Something a person has to know about a result, or about why there is none.
 *
 * @param code stable, lower case with hyphens
 * @param text what was seen, with the figures
 * @param remedy what to do
 */
public record Remark(String code, String text, String remedy) {}
