package org.restpoint.stability.guidance;

/** What has to be minded with the numbers of published tables. */
public final class Cautions {

  /**
   * For water that somebody may drink. Common public-health advice; of pages seen, KFL&amp;A Public
   * Health, "Nitrate in Well Water", and University of Nebraska-Lincoln Extension, "Safe Water for
   * Baby Formula", say so.
   */
  public static final String DRINKING =
      "This is a screening result. Before anybody drinks the water, have it tested by a certified"
          + " laboratory, for nitrite and bacteria as well. Infants under six months are most at"
          + " risk: do not make formula or baby food with water that is near or above the limit, or"
          + " that no laboratory has tested. Do not boil it against nitrate: boiling concentrates"
          + " it. The health department says what to do, also to whoever is pregnant.";

  /** For whatever is decided by a number. */
  public static final String ADVICE =
      "Local rules, extension advice and licensed practice come before this table.";

  /** For nitrogen that somebody may spread. */
  static final String SPREADING =
      "One sample is not a field: follow the sampling rules of the test. Local rules on rates, times"
          + " and distances to water hold whatever the number is; ask the local extension service or"
          + " a licensed crop adviser before spreading.";

  private Cautions() {}
}
