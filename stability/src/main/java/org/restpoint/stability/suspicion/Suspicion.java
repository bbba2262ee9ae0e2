package org.restpoint.stability.suspicion;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * The causes of a standard that reads off, the likeliest first.
 *
 * <p>{@code w = w₀·∏rᵢ}: each suspect's weight w is its weight before any evidence w₀ ({@link
 * Suspect}) times a ratio r for each thing that was seen, above 1 where it speaks for the suspect
 * and below where it speaks against it, as odds are multiplied by likelihood ratios (Bayes). The
 * ratios are our choice; they stand beside each rule and in a table of the module's README.
 *
 * <p>Edge results: a suspect that nothing seen speaks for is left out, so a standard of which
 * nothing is known has no causes; suspects of one weight stand in the order of {@link Suspect}.
 *
 * @param clues what is known
 */
public record Suspicion(Clues clues) {

  /** Less is within what any fresh portion differs by. */
  private static final double LEAST_SHARE = 0.02;

  /** Half a beaker of something else is seldom overlooked. */
  private static final double GROSS_FACTOR = 2;

  /** What hangs on an electrode and its sleeve is a few per cent of a beaker (common practice). */
  private static final double MOST_CARRIED = 0.1;

  /** Beyond it no electrode carries over. */
  private static final double NEVER_CARRIED = 0.3;

  /** As much as standards read well scatter a slope by. */
  private static final double SLOPE_FALL_PERCENT = 2;

  private static final double STEEP_FALL_PERCENT = 5;

  /** Below it a slope is worth a look (common practice). */
  private static final double LOW_SLOPE_PERCENT = 92;

  /** Two weeks before its date a standard that reads off is doubted for its date, too. */
  private static final long NEAR_EXPIRY_DAYS = 14;

  /** A third of what it moved by: then most of it is explained. */
  private static final double EXPLAINED_SHARE = 1.0 / 3;

  /** Portions read one after the other that differ by less read alike: twice a usual tolerance. */
  private static final double ALIKE_MILLIVOLTS = 2;

  private RestSigns rest() {
    return new RestSigns(clues);
  }

  /** The causes, the likeliest first. */
  public List<Cause> causes() {
    return Stream.of(
            wrongContent(Suspect.STANDARD_CONTAMINATED),
            wrongContent(Suspect.STANDARD_DILUTED),
            notSoaked(),
            bubble(),
            rinseMissed(),
            ageing(),
            temperature(),
            expired())
        .flatMap(Optional::stream)
        .sorted(Comparator.comparingDouble(Cause::weight).reversed().thenComparing(Cause::suspect))
        .toList();
  }

  private Optional<Cause> wrongContent(Suspect suspect) {
    boolean stronger = suspect == Suspect.STANDARD_CONTAMINATED;
    double ratio = clues.moved().map(Moved::ratio).orElse(1.0);
    boolean fits = stronger ? ratio > 1 + LEAST_SHARE : ratio < 1 - LEAST_SHARE;
    boolean gross = ratio > GROSS_FACTOR || ratio < 1 / GROSS_FACTOR;
    boolean again = readAlikeBefore();
    String how =
        stronger
            ? "A stronger solution may have dropped into the beaker, or water dried from it: take a fresh"
                + " portion from the bottle into a clean, dry beaker"
            : "Rinse water in the beaker or on the electrode dilutes it: take a fresh portion from the"
                + " bottle into a clean, dry beaker, blot the electrode";
    return new Weighing(suspect)
        .accuse(fits, 2, "it reads as " + concentrated(ratio) + " concentrated than it is")
        .support(rest().restedAsUsual(), 1.5, "it came to rest as usual, " + rest().seconds())
        .support(again, 1 / 3.0, "but a portion read just before read alike")
        .excuse(gross, 2)
        .excuse(rest().isSlow() || rest().isCreeping(), 3)
        .excuse(rest().isNoisy(), 3)
        .cause(
            again
                ? "Open another bottle or lot; or read another standard: if that has moved as much, it is"
                    + " the electrode, and the round is accepted."
                : how + " and read it again.");
  }

  private Optional<Cause> notSoaked() {
    Optional<Boolean> soaked = clues.circumstances().soaked();
    return new Weighing(Suspect.ELECTRODE_NOT_SOAKED)
        .accuse(soaked.equals(Optional.of(false)), 8, "the electrode was not soaked")
        .accuse(rest().isSlow(), 4, "it took far longer than usual, " + rest().seconds())
        .accuse(rest().isCreeping(), 3, "it still drifted when it was taken")
        .accuse(rest().isUnsettled(), 3, "it did not come to rest, " + rest().seconds())
        .support(readAlikeBefore(), 2, "a portion read just before read alike")
        .support(rest().isForetold(), 1.2, "its potential was foretold, not waited for")
        .excuse(soaked.equals(Optional.of(true)), 8)
        .cause(
            "Soak the electrode as its maker says, 20 min by common practice, and read the standard"
                + " again.");
  }

  private Optional<Cause> bubble() {
    return new Weighing(Suspect.AIR_BUBBLE)
        .accuse(rest().isNoisy(), 6, "its last readings jumped over " + rest().spread())
        .accuse(rest().isUnsettled(), 2, "it did not come to rest, " + rest().seconds())
        .cause(
            "Lift the electrode, tap the bubble off the membrane and the reference's junction, dip it in"
                + " at a slant and read the standard again.");
  }

  private Optional<Cause> rinseMissed() {
    Optional<Boolean> rinsed = clues.circumstances().rinsedSince();
    boolean unrinsed = rinsed.equals(Optional.of(false));
    OptionalDouble share = carriedShare();
    boolean away =
        clues.circumstances().previousMolesPerLitre().isPresent()
            && clues.moved().isPresent()
            && share.isEmpty();
    double carried = share.orElse(1);
    return away
        ? Optional.empty()
        : new Weighing(Suspect.RINSE_MISSED)
            .accuse(
                unrinsed, 4, "nobody said that the electrode was rinsed since the solution before")
            .accuse(
                share.isPresent() && carried <= NEVER_CARRIED,
                carried <= MOST_CARRIED ? 4 : 1.5,
                "it reads towards the solution before: "
                    + percent(carried)
                    + " of that in it would do")
            .excuse(share.isPresent() && carried > NEVER_CARRIED, 4)
            .excuse(readAlikeBefore(), 4)
            .excuse(rinsed.equals(Optional.of(true)), 6)
            .cause(
                "Rinse the electrode and blot it (never wipe), and read a fresh portion: something was"
                    + " carried into this one.");
  }

  /**
   * The share of the solution before that explains the reading; empty where it lies away from it.
   */
  private OptionalDouble carriedShare() {
    OptionalDouble before = clues.circumstances().previousMolesPerLitre();
    if (before.isEmpty() || clues.moved().isEmpty()) {
      return OptionalDouble.empty();
    }
    Moved moved = clues.moved().get();
    double carried = moved.apparentMolesPerLitre() - moved.expectedMolesPerLitre();
    double between = before.getAsDouble() - moved.expectedMolesPerLitre();
    return carried * between > 0 && carried / between <= 1
        ? OptionalDouble.of(carried / between)
        : OptionalDouble.empty();
  }

  private Optional<Cause> ageing() {
    List<Double> slopes = clues.slopePercents();
    double last = slopes.isEmpty() ? 100 : slopes.get(slopes.size() - 1);
    double first = slopes.isEmpty() ? 100 : slopes.get(0);
    double fall = slopes.size() < 3 ? 0 : first - last;
    return new Weighing(Suspect.MEMBRANE_AGEING)
        .accuse(
            fall >= SLOPE_FALL_PERCENT,
            fall >= STEEP_FALL_PERCENT ? 6 : 3,
            String.format(
                Locale.ROOT,
                "over the last %d calibrations the slope fell from %.1f to %.1f %%",
                slopes.size(),
                first,
                last))
        .accuse(
            last < LOW_SLOPE_PERCENT,
            2,
            String.format(Locale.ROOT, "the slope is %.1f %% of the ideal", last))
        .accuse(rest().isSlow(), 2, "it took far longer than usual, " + rest().seconds())
        .support(readAlikeBefore(), 2, "a portion read just before read alike")
        .cause(
            "Read two standards a decade apart for the slope; if it stays low or slow, change the membrane,"
                + " give: replaced, and calibrate.");
  }

  private Optional<Cause> temperature() {
    if (clues.warmth().isEmpty()) {
      return Optional.empty();
    }
    Clues.Warmth warmth = clues.warmth().get();
    double kelvin = warmth.celsius() - warmth.referenceCelsius();
    boolean differs = Math.abs(kelvin) > warmth.withinKelvin();
    double moved = clues.moved().map(Moved::millivolts).orElse(0.0);
    double at = warmth.movedAtReferenceMillivolts();
    return new Weighing(Suspect.TEMPERATURE)
        .accuse(
            differs,
            3,
            String.format(
                Locale.ROOT,
                "it is told to have %.1f \u00b0C, %.1f K %s than the calibration",
                warmth.celsius(),
                Math.abs(kelvin),
                kelvin > 0 ? "warmer" : "colder"))
        .support(
            differs && Math.abs(at) < EXPLAINED_SHARE * Math.abs(moved),
            4,
            "at the calibration's temperature it would be off by no more than " + millivolts(at))
        .cause(
            "Look whether the thermometer stands in the standard and tells the truth, let the standard"
                + " come to the temperature of the others, and read it again.");
  }

  private Optional<Cause> expired() {
    long days = clues.daysToExpiry().orElse(Long.MAX_VALUE);
    return new Weighing(Suspect.STANDARD_EXPIRED)
        .accuse(days < 0, 20, "it expired " + -days + " days ago")
        .accuse(days >= 0 && days <= NEAR_EXPIRY_DAYS, 3, "it expires in " + days + " days")
        .cause("Take a fresh lot and write its lot and expiry into the station file.");
  }

  private boolean readAlikeBefore() {
    return clues
        .moved()
        .filter(
            moved ->
                moved.refusedBeforeMillivolts().isPresent()
                    && Math.abs(moved.refusedBeforeMillivolts().getAsDouble() - moved.millivolts())
                        <= ALIKE_MILLIVOLTS)
        .isPresent();
  }

  private static String concentrated(double ratio) {
    return ratio > 1 ? percent(ratio - 1) + " more" : percent(1 - ratio) + " less";
  }

  private static String percent(double share) {
    return String.format(Locale.ROOT, share < 0.1 ? "%.1f %%" : "%.0f %%", 100 * share);
  }

  private static String millivolts(double value) {
    return String.format(Locale.ROOT, "%.2f mV", Math.abs(value));
  }
}
