package org.restpoint.config.file;

import java.util.List;
import java.util.Optional;
import org.restpoint.config.file.Measure.Measured;
import org.restpoint.config.station.LowEnd;

/** Reads what becomes of an electrode's line where the concentration is low. */
final class LowEndReader {

  /** The keys of a low end that is a mapping. */
  static final List<String> FIXED_KEYS = List.of("fixed", "uncertainty");

  private static final List<String> WORDS = List.of("straight", "curved");
  private static final String OR_FIXED = ", or a mapping like { fixed: 0.05 mg/L }";
  private static final String A_LOW_END = "straight, curved" + OR_FIXED;
  private static final double USUAL_UNCERTAINTY = 0.2;

  /** Offset, slope and bend are three numbers to find, and one standard more tells how well. */
  private static final int FEWEST_STANDARDS = 4;

  private LowEndReader() {}

  /**
   * Reads the low end.
   *
   * @param standards how many standards the electrode has
   */
  static LowEnd read(Entry entry, Measurand measurand, int standards) {
    LowEnd lowEnd = read(entry);
    if (measurand.isInPh() && !(lowEnd instanceof LowEnd.Straight)) {
      entry.refuse("straight" + measurand.because());
    } else if (lowEnd instanceof LowEnd.Curved && 0 < standards && standards < FEWEST_STANDARDS) {
      String found = "curved with " + standards + (standards == 1 ? " standard" : " standards");
      entry.refuse(
          "straight or fixed, or four standards or more to find a curve from",
          found,
          "name another standard");
    }
    return lowEnd;
  }

  private static LowEnd read(Entry entry) {
    if (entry.isMapping()) {
      return entry.section(A_LOW_END).flatMap(LowEndReader::fixed).orElseGet(LowEnd.Straight::new);
    }
    if (entry.quietText().isEmpty()) {
      entry.refuse(A_LOW_END);
      return new LowEnd.Straight();
    }
    return entry
        .word(WORDS, OR_FIXED)
        .filter(word -> word.equals("curved"))
        .<LowEnd>map(word -> new LowEnd.Curved())
        .orElseGet(LowEnd.Straight::new);
  }

  private static Optional<LowEnd> fixed(Section keys) {
    keys.only(FIXED_KEYS);
    Optional<Measured> level =
        keys.need("fixed", Measure.CONCENTRATION.expected()).flatMap(Concentrations::read);
    double uncertainty =
        keys.find("uncertainty")
            .flatMap(value -> Concentrations.uncertainty(value, level))
            .orElse(USUAL_UNCERTAINTY);
    return level.map(read -> new LowEnd.Fixed(Concentrations.quantity(read), uncertainty));
  }
}
