package org.restpoint.acquisition.example;

import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;

/**
 * The invented recordings under stability/examples, with what their solutions truly hold. Molar
 * masses in g/mol: IUPAC, abridged.
 */
public final class Examples {

  /** Nitrate in the tile water of {@code direct}, mg/L as N. */
  public static final double TILE_WATER = 24.6;

  /** Nitrate in the sample of {@code low-end}, mg/L as N. */
  public static final double SPRING = 1.0;

  /** As much as bends the electrode's low end in {@code low-end}, mg/L as N. */
  public static final double LOW_END = 0.3;

  /** Nitrate in the second sample of {@code low-end}, mg/L as N. */
  public static final double RAIN = 0.05;

  /** pH of the sample of {@code ph}. */
  public static final double POND_PH = 7.62;

  /** Nitrate in the drain water of {@code interference}, mg/L as N. */
  public static final double DRAIN = 4.0;

  /** Nitrite in the same, mg/L as N; the station file knows only that it is at most 5. */
  public static final double DRAIN_NITRITE = 2.0;

  /** Its share of the electrode's answer. */
  public static final double NITRITE_SELECTIVITY = 0.06;

  /** Nitrate in the sample of {@code outlying}, mg/L as N. */
  public static final double WELL = 12.0;

  /** By how much the potential slips in {@code outlying}, mV. */
  public static final double SLIP_MILLIVOLTS = 1.8;

  /** Nitrate in the soil extract of {@code creep}, mg/L as N. */
  public static final double EXTRACT = 18.0;

  private static final double NITROGEN_GRAMS_PER_MOLE = 14.007;
  private static final double CHLORIDE_GRAMS_PER_MOLE = 35.45;
  private static final double NITRATE_OFFSET_MILLIVOLTS = 31.4;
  private static final double ISOPOTENTIAL_NITROGEN = 400;
  private static final double SOAKED_IN = 2;

  private Examples() {}

  /** The names of their folders. */
  public static Set<String> names() {
    return all().keySet();
  }

  /** All of them by the names of their folders. */
  static Map<String, MadeRecording> all() {
    Map<String, MadeRecording> all = new LinkedHashMap<>();
    all.put("direct", direct());
    all.put("low-end", lowEnd());
    all.put("ph", ph());
    all.put("interference", interference());
    all.put("outlying", outlying());
    all.put("faults", faults());
    all.put("creep", creep());
    return all;
  }

  private static double nitrogen(double milligramsPerLitre) {
    return milligramsPerLitre / 1000 / NITROGEN_GRAMS_PER_MOLE;
  }

  private static MadeElectrode nitrate(double share, double lowEndMilligramsPerLitre) {
    return MadeElectrode.of(
            -1,
            share,
            NITRATE_OFFSET_MILLIVOLTS,
            nitrogen(ISOPOTENTIAL_NITROGEN),
            nitrogen(lowEndMilligramsPerLitre))
        .soakedIn(nitrogen(SOAKED_IN));
  }

  private static MadeRecording direct() {
    MadeElectrode electrode = nitrate(0.97, 0);
    return new MadeRecording(41)
        .calibrate("low", "no3", electrode.into(nitrogen(5), 22), 22)
        .calibrate("mid", "no3", electrode.into(nitrogen(20), 22), 22)
        .calibrate("high", "no3", electrode.into(nitrogen(100), 22), 22)
        .measure("tile, cold", "no3", electrode.into(nitrogen(TILE_WATER), 16), 16)
        .measure("tile, at 22 Cel", "no3", electrode.into(nitrogen(TILE_WATER), 22), 22)
        .verify("mid", "no3", electrode.into(nitrogen(20), 22), 22);
  }

  private static MadeRecording lowEnd() {
    MadeElectrode electrode = nitrate(0.97, LOW_END);
    MadeRecording made = new MadeRecording(62);
    for (double standard : new double[] {0.1, 0.5, 2, 10, 100}) {
      String name =
          "n-" + (standard < 1 ? String.valueOf(standard) : String.valueOf((int) standard));
      made.calibrate(name.replace('.', '_'), "no3", electrode.into(nitrogen(standard), 22), 22);
    }
    return made.measure("spring", "no3", electrode.into(nitrogen(SPRING), 22), 22)
        .measure("rain", "no3", electrode.into(nitrogen(RAIN), 22), 22);
  }

  /** The buffers' pH at 15 °C: R. P. Buck et al., Pure Appl. Chem. 74 (2002) 2169. */
  private static MadeRecording ph() {
    MadeElectrode electrode = MadeElectrode.of(1, 0.985, 414, 1e-7, 0);
    return new MadeRecording(33)
        .calibrate("b4", "ph", electrode.into(hydrogen(3.998), 15), 15)
        .calibrate("b7", "ph", electrode.into(hydrogen(6.900), 15), 15)
        .calibrate("b9", "ph", electrode.into(hydrogen(9.276), 15), 15)
        .measure("pond", "ph", electrode.into(hydrogen(POND_PH), 10), 10);
  }

  private static double hydrogen(double ph) {
    return StrictMath.pow(10, -ph);
  }

  /** Potassium nitrate standards without adjustor, and water of an ionic strength of 0.02 mol/L. */
  private static MadeRecording interference() {
    MadeElectrode electrode = nitrate(0.97, 0);
    MadeRecording made = new MadeRecording(4);
    for (int standard : new int[] {1, 10, 100}) {
      double c = nitrogen(standard);
      made.calibrate("n-" + standard, "no3", electrode.into(coefficient(c) * c, 25), 25);
    }
    double chloride = 0.150 / CHLORIDE_GRAMS_PER_MOLE;
    double seen =
        nitrogen(DRAIN) + 0.005 * chloride + NITRITE_SELECTIVITY * nitrogen(DRAIN_NITRITE);
    return made.measure("drain", "no3", electrode.into(coefficient(0.02) * seen, 25), 25);
  }

  /** γ of an ion of one charge at 25 °C: C. W. Davies, Ion Association, 1962; A = 0.5085. */
  private static double coefficient(double ionicStrength) {
    double root = StrictMath.sqrt(ionicStrength);
    return StrictMath.pow(10, -0.5085 * (root / (1 + root) - 0.3 * ionicStrength));
  }

  /** The standard of 30 mg/L has taken up 15 % from a stronger one; 3 h later E0 is lower. */
  private static MadeRecording outlying() {
    MadeElectrode electrode = nitrate(0.97, 0);
    MadeElectrode later =
        MadeElectrode.of(
                -1,
                0.97,
                NITRATE_OFFSET_MILLIVOLTS - SLIP_MILLIVOLTS,
                nitrogen(ISOPOTENTIAL_NITROGEN),
                0)
            .soakedIn(nitrogen(SOAKED_IN));
    return new MadeRecording(5)
        .calibrate("n-1", "no3", electrode.into(nitrogen(1), 22), 22)
        .calibrate("n-3", "no3", electrode.into(nitrogen(3), 22), 22)
        .calibrate("n-10", "no3", electrode.into(nitrogen(10), 22), 22)
        .calibrate("n-30", "no3", electrode.into(nitrogen(30 * 1.15), 22), 22)
        .calibrate("n-100", "no3", electrode.into(nitrogen(100), 22), 22)
        .calibrate("n-30", "no3", electrode.into(nitrogen(30), 22), 22)
        .measure("well", "no3", electrode.into(nitrogen(WELL), 22), 22)
        .meanwhile(Duration.ofHours(3))
        .calibrate("n-10", "no3", later.into(nitrogen(10), 22), 22)
        .measure("well", "no3", later.into(nitrogen(WELL), 22), 22);
  }

  /** The same sound electrode at three broken chains. */
  private static MadeRecording faults() {
    MadeElectrode electrode = nitrate(0.97, 0);
    MadeRecording made = new MadeRecording(6);
    for (int standard : new int[] {10, 100}) {
      Trace sound = electrode.into(nitrogen(standard), 22);
      Map<String, Trace> chains = new LinkedHashMap<>();
      chains.put("reversed", seconds -> -sound.millivolts(seconds));
      chains.put("dead", seconds -> 120);
      chains.put("shorted", seconds -> 0);
      made.calibrate("n-" + standard, chains, 22);
    }
    return made;
  }

  /** In the extract the membrane lags: 2 mV are still to come, and go with a minute. */
  private static MadeRecording creep() {
    MadeElectrode electrode = nitrate(0.97, 0);
    MadeRecording made = new MadeRecording(7);
    for (int standard : new int[] {10, 100}) {
      made.calibrate("n-" + standard, atBoth(electrode.into(nitrogen(standard), 22)), 22);
    }
    Trace film = electrode.into(nitrogen(EXTRACT), 22);
    Trace lagging = seconds -> film.millivolts(seconds) + 2 * StrictMath.exp(-seconds / 60);
    return made.measure("extract", atBoth(lagging), 22, Duration.ofMinutes(4));
  }

  /** One electrode read by two rules. */
  private static Map<String, Trace> atBoth(Trace trace) {
    Map<String, Trace> both = new LinkedHashMap<>();
    both.put("alike", trace);
    both.put("slow-enough", trace);
    return both;
  }
}
