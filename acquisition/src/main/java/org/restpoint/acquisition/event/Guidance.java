package org.restpoint.acquisition.event;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a number means by a published table that the station file chose.
 *
 * @param table the table's name in the station file
 * @param title what the table is about
 * @param meaning what the number means by it, in plain words
 * @param rate what the table's formula recommends, where it has one
 * @param source where the table was published
 * @param scope for which region, season and depth it holds, and how long
 * @param caution what to mind, and whose advice comes first
 */
public record Guidance(
    String table,
    String title,
    String meaning,
    Optional<Rate> rate,
    String source,
    String scope,
    String caution) {

  /**
   * A recommended rate.
   *
   * @param value the rate
   * @param unit its unit
   * @param uncertainty what the result's uncertainty makes of it, expanded, k = 2; absent where the
   *     rate is at a bound
   * @param formula how it was reckoned, with its figures
   */
  public record Rate(double value, String unit, OptionalDouble uncertainty, String formula) {}
}
