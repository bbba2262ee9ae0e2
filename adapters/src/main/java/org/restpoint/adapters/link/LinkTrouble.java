package org.restpoint.adapters.link;

/**
 * What a link tells the people around it.
 *
 * @param code stable, lower case with hyphens: {@code port-absent}, {@code port-busy}, {@code
 *     port-not-permitted}, {@code port-lost}, {@code port-back}, {@code no-data}, {@code
 *     line-rejected}, {@code line-too-long}, {@code hand-over-full}, …
 * @param text what happened and where, one sentence
 * @param remedy what to do about it, one sentence; empty when nothing is to be done
 */
public record LinkTrouble(String code, String text, String remedy) {

  /** The text, and the remedy where there is one. */
  public String sentences() {
    return remedy.isEmpty() ? text : text + ". " + remedy;
  }
}
