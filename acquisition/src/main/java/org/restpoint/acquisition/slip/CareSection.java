package org.restpoint.acquisition.slip;

import java.util.Locale;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.event.Result.Reported;

/** What somebody could be hurt by, and what the number is not. */
final class CareSection {

  /**
   * Nitrate and nitrite hinder an infant's blood from carrying oxygen (the reason of the limits in
   * 40 CFR 141.62); boiling leaves the salt behind and makes it stronger. Both are what health
   * authorities commonly print, from memory.
   */
  private static final String INFANTS =
      "Infants: nitrate in drinking water can make a baby gravely ill. Boiling does not remove it,"
          + " it makes it stronger. Do not give a baby well water on the strength of this slip; have"
          + " it tested by a certified laboratory";

  private CareSection() {}

  static Slip.Section of(Result result, Subject subject) {
    Parts parts = new Parts("Take care");
    if (subject.isOxidisedNitrogen()
        && NumberSection.number(result).isPresent()
        && mayBeDrunk(result)) {
      parts.sentence(INFANTS);
    }
    return parts.sentence(result.caution()).section();
  }

  /** All but soil and known solutions: of what nobody noted the kind, somebody may drink. */
  private static boolean mayBeDrunk(Result result) {
    String kind =
        result.sample().map(sample -> sample.path("kind").asText()).orElse("")
            + " "
            + result.reported().map(Reported::kind).orElse("");
    boolean soil = kind.toLowerCase(Locale.ROOT).contains("soil");
    return !soil && (result.verification().isEmpty() || result.sample().isPresent());
  }
}
