package org.restpoint.acquisition.sample;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * How a sample of water may be kept until it is read.
 *
 * <pre>
 *   held too long   t - t0 &gt; limit
 *   held warm       it had to be cooled, t - t0 &gt; 15 min, and T &gt; 6 °C or it was not cooled
 * </pre>
 *
 * <p>t when it was read, t0 when it was taken, T the temperature it was kept at in °C (k = 1, no
 * uncertainty is reckoned). At a limit itself it is kept well. Edges: a sample that is not known to
 * be water has no rule, nor has an ion that the table does not have, nor a reading whose time is
 * not a date; where nobody says when it was taken, that is told instead; a temperature counts more
 * than the word cooled, and where there is neither nothing is said.
 *
 * <p>Reference: 40 CFR 136.3(e), Table II, inorganic tests. Seen in FL DEP SOP FS 1000, table FS
 * 1000-4: the 6 °C, the 28 days of ammonia, chloride and fluoride, the 15 minutes of pH. Seen in a
 * laboratory's table of holding times (with the 4 °C of older editions): the 48 hours of nitrate
 * and nitrite. From memory: bromide and sulfate, the metals, that what is to be cooled must be so
 * within 15 minutes. The table asks for acid (pH &lt; 2) in samples for ammonia and metals; records
 * do not say whether it was added, and without it they keep for less long.
 *
 * @param limit how long it may be kept
 * @param cool whether it must be cooled
 */
public record HoldingTime(Duration limit, boolean cool) {

  /** Read later than it may be kept. */
  public static final String TOO_LONG = "held-too-long";

  /** Not cooled as it should have been. */
  public static final String WARM = "held-warm";

  /** Nobody says when it was taken. */
  public static final String UNKNOWN = "holding-unknown";

  /** All its flags. */
  static final List<String> FLAGS = List.of(TOO_LONG, WARM, UNKNOWN);

  private static final double WARMEST_CELSIUS = 6;

  private static final Duration AT_ONCE = Duration.ofMinutes(15);

  /** Six months, as laboratories count them; common practice. */
  private static final Duration METALS = Duration.ofDays(180);

  private static final Map<String, HoldingTime> TABLE =
      Map.ofEntries(
          Map.entry("nitrate", new HoldingTime(Duration.ofDays(2), true)),
          Map.entry("nitrite", new HoldingTime(Duration.ofDays(2), true)),
          Map.entry("ammonium", new HoldingTime(Duration.ofDays(28), true)),
          Map.entry("sulfate", new HoldingTime(Duration.ofDays(28), true)),
          Map.entry("chloride", new HoldingTime(Duration.ofDays(28), false)),
          Map.entry("bromide", new HoldingTime(Duration.ofDays(28), false)),
          Map.entry("fluoride", new HoldingTime(Duration.ofDays(28), false)),
          Map.entry("potassium", new HoldingTime(METALS, false)),
          Map.entry("sodium", new HoldingTime(METALS, false)),
          Map.entry("calcium", new HoldingTime(METALS, false)),
          Map.entry("magnesium", new HoldingTime(METALS, false)),
          Map.entry("hydrogen", new HoldingTime(Duration.ofMinutes(15), false)));

  /** The rule for an ion, by its name; empty where the table has none. */
  public static Optional<HoldingTime> of(String analyte) {
    return Optional.ofNullable(TABLE.get(analyte));
  }

  /** What is to be flagged on a sample's reading for an ion; empty where all is well. */
  public static List<String> flags(String analyte, Sample sample, Instant read) {
    Optional<HoldingTime> rule = of(analyte);
    boolean water = sample.kind().filter(SampleKind::isWater).isPresent();
    return rule.isPresent() && water && Sample.hasDate(read)
        ? rule.get().flags(sample, read)
        : List.of();
  }

  private List<String> flags(Sample sample, Instant read) {
    if (sample.taken().isEmpty()) {
      return List.of(UNKNOWN);
    }
    Duration kept = Duration.between(sample.taken().get().toInstant(), read);
    List<String> flags = new ArrayList<>();
    if (kept.compareTo(limit) > 0) {
      flags.add(TOO_LONG);
    }
    if (cool && kept.compareTo(AT_ONCE) > 0 && isWarm(sample)) {
      flags.add(WARM);
    }
    return flags;
  }

  private static boolean isWarm(Sample sample) {
    return sample.keptCelsius().isPresent()
        ? sample.keptCelsius().getAsDouble() > WARMEST_CELSIUS
        : !sample.cooled().orElse(true);
  }
}
