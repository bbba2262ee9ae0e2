package org.restpoint.stability.guidance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.restpoint.stability.chemistry.Basis;

/** In which bands a number may be, with its uncertainty and where it is only a limit itself. */
class BandsTest {

  /** Invented: below 5 low, below 10 middling, below 20 much, else very much, mg/L as N. */
  private static final GuidanceTable FOUR =
      table(
          band(OptionalDouble.empty(), 5, "low"),
          band(OptionalDouble.of(5), 10, "middling"),
          band(OptionalDouble.of(10), 20, "much"),
          new Band(OptionalDouble.of(20), OptionalDouble.empty(), "very much", Optional.empty()));

  private static Band band(OptionalDouble from, double below, String says) {
    return new Band(from, OptionalDouble.of(below), says, Optional.empty());
  }

  private static GuidanceTable table(Band... bands) {
    return new GuidanceTable(
        "Invented",
        "invented",
        new Scope("nowhere", "never", Optional.empty(), Optional.empty(), Optional.empty()),
        Numbers.nitrate("water", "mg/L", Basis.AS_N),
        Arrays.asList(bands),
        Optional.empty(),
        Cautions.ADVICE);
  }

  @ParameterizedTest
  @CsvSource({
    "=, 0, 0, low",
    "=, 4.999, 0, low",
    "=, 5, 0, middling",
    "=, 9.999, 0, middling",
    "=, 10, 0, much",
    "=, 20, 0, very much",
    "=, 1000, 0, very much",
    "=, 7.5, 2.4, middling",
    "=, 7.5, 2.5, middling|much",
    "=, 7.5, 2.6, low|middling|much",
    "=, 10, 0.1, middling|much",
    "=, 9.5, 0.4, middling",
    "=, 9.5, 0.6, middling|much",
    "=, 10.5, 0.4, much",
    "<, 2, 0, low",
    "<, 5, 0, low",
    "<, 5, 0.5, low|middling",
    "<, 8, 0, low|middling",
    "<, 30, 0, low|middling|much|very much",
    ">, 8, 0, middling|much|very much",
    ">, 10, 0, much|very much",
    ">, 20, 0, very much",
    ">, 20, 0.5, much|very much",
    ">, 200, 8, very much"
  })
  void allBandsThatItMayBeInAreNamed(String sign, double value, double uncertainty, String bands) {
    Found found = Numbers.water(Relation.ofSign(sign).orElseThrow(), value, uncertainty);

    assertThat(Numbers.applies(FOUR, found).bands())
        .extracting(Band::says)
        .containsExactly(bands.split("\\|", -1));
  }

  @Test
  void theWordsSayWhetherItLiesTooNearALimitOrIsNoMoreThanALimit() {
    assertThat(Numbers.applies(FOUR, Numbers.water(Relation.EQUAL, 7.5, 0.31)).meaning())
        .isEqualTo("7.50 ± 0.31 mg/L as N: middling.");
    assertThat(Numbers.applies(FOUR, Numbers.water(Relation.EQUAL, 9.8, 0.5)).meaning())
        .isEqualTo(
            "9.80 ± 0.50 mg/L as N lies too near 10 mg/L as N to tell. It may be “middling” or"
                + " “much”.");
    assertThat(Numbers.applies(FOUR, Numbers.water(Relation.ABOVE, 8, 0)).meaning())
        .isEqualTo(
            "above 8 mg/L as N is all that is known, and that cannot tell on which side of 10 and 20"
                + " it lies. It may be “middling” or “much” or “very much”.");
    assertThat(Numbers.applies(FOUR, Numbers.water(Relation.BELOW, 2, 0.2)).meaning())
        .isEqualTo("below 2 mg/L as N: low.");
  }

  @Test
  void bandsThatDoNotFollowOnEachOtherAreRefused() {
    Band low = band(OptionalDouble.empty(), 5, "low");
    Band high = new Band(OptionalDouble.of(5), OptionalDouble.empty(), "high", Optional.empty());
    assertThat(table(low, high).bands()).hasSize(2);
    for (List<Band> wrong :
        List.of(
            List.of(low),
            List.of(high),
            List.of(high, low),
            List.of(low, band(OptionalDouble.of(5), 5, "none"), high),
            List.of(low, band(OptionalDouble.of(6), 7, "gap"), high))) {
      assertThatIllegalArgumentException().isThrownBy(() -> table(wrong.toArray(Band[]::new)));
    }
  }
}
