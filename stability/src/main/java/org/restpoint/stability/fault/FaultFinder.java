package org.restpoint.stability.fault;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.calibration.ResponseCurve;
import org.restpoint.stability.electrode.Nernst;
import org.restpoint.stability.fault.Finding.Answering;
import org.restpoint.stability.fault.Finding.Faulty;
import org.restpoint.stability.fault.Finding.Untold;
import org.restpoint.stability.fit.StraightLine;

/**
 * Recognises a reversed, dead, open or shorted chain from a few solutions.
 *
 * <p>With the slope S of E on log10 c by least squares, over known solutions at least {@link
 * #LEAST_DECADES} apart, and the ideal slope {@code S₀ = 1000·ln 10·R·T/(z·F)}, in this order:
 *
 * <ol>
 *   <li>open: a potential beyond {@link #RAIL_MILLIVOLTS}, or readings of one solution whose
 *       standard deviation is above {@link #WILD_NOISE_MILLIVOLTS} or whose spread is above {@link
 *       #WILD_SPREAD_MILLIVOLTS}; one solution suffices;
 *   <li>shorted: all potentials within {@link #ZERO_MILLIVOLTS} of 0 in known solutions that would
 *       make an ideal electrode move by {@link #LEAST_CHANGE_MILLIVOLTS} or more; or within that of
 *       0 where the last line makes it more than {@link #IMPOSSIBLE_MOLES_PER_LITRE};
 *   <li>dead: {@code |S| < 5 % · |S₀|};
 *   <li>reversed: S and S₀ of different sign;
 *   <li>otherwise it answers.
 * </ol>
 *
 * <p>Edge results: 0 mV in one solution is a potential like any other (a pH of 7, a nitrate
 * electrode at one concentration) and tells nothing by itself. Without two known solutions far
 * enough apart, and without an open or shorted input, nothing can be told, which is a case of its
 * own; so are no solutions at all. The order of the solutions does not matter, to the last bit.
 *
 * <p>Reference: the ideal slope as in {@link Nernst}; the thresholds are our choice, each with its
 * reason.
 *
 * @param charge charge number of the ion, not 0
 * @param celsius temperature of the solutions, above absolute zero
 */
public record FaultFinder(int charge, double celsius) {

  /** No electrode in a solution of its ion comes near it; where inputs stop, or beyond. */
  public static final double RAIL_MILLIVOLTS = 1500;

  /** A solution shields: an electrode in it shows mains by tenths of a mV, an open wire by tens. */
  public static final double WILD_NOISE_MILLIVOLTS = 10;

  /** As much as a decade of a monovalent ion: nothing that rests in one solution wanders so far. */
  public static final double WILD_SPREAD_MILLIVOLTS = 50;

  /** Offsets of meters are below 1 mV; twice that is still held at zero. */
  public static final double ZERO_MILLIVOLTS = 2;

  /** Twice the 4 mV from −2 to 2: an electrode of more than half the ideal slope cannot fit in. */
  public static final double LEAST_CHANGE_MILLIVOLTS = 8;

  /** Solutions less than a factor of two apart make too little difference to tell from. */
  public static final double LEAST_DECADES = 0.3;

  /** The share of the ideal slope below which there is no answer, as in a calibration. */
  public static final double NO_ANSWER_PERCENT = 5;

  /** Water itself is 55.5 mol/L of water: no solution holds more of an ion. */
  public static final double IMPOSSIBLE_MOLES_PER_LITRE = 60;

  public FaultFinder {
    Nernst.idealSlopeMillivoltsPerDecade(charge, celsius); // refuses no charge and no temperature
  }

  /** Looks at some solutions, without a line from before. */
  public Finding find(List<FaultReading> readings) {
    return find(readings, Optional.empty());
  }

  /**
   * Looks at some solutions.
   *
   * @param readings each solution once or more, in any order
   * @param lastLine the last accepted line of the same electrode, if there is one
   */
  public Finding find(List<FaultReading> readings, Optional<ResponseCurve> lastLine) {
    List<FaultReading> sorted = new ArrayList<>(readings);
    sorted.sort(
        Comparator.comparingDouble(
                (FaultReading r) -> r.log10MolesPerLitre().orElse(Double.MAX_VALUE))
            .thenComparingDouble(FaultReading::millivolts)
            .thenComparing(FaultReading::solution)
            .thenComparingDouble(r -> r.noiseMillivolts().orElse(-1))
            .thenComparingDouble(r -> r.spreadMillivolts().orElse(-1)));
    List<FaultReading> known = sorted.stream().filter(FaultReading::known).toList();
    OptionalDouble slope = slope(known);
    OptionalDouble percent =
        slope.isPresent()
            ? OptionalDouble.of(100 * slope.getAsDouble() / ideal())
            : OptionalDouble.empty();
    InputCheck input = new InputCheck(sorted, percent);
    double expected = Math.abs(ideal()) * decades(known);
    return input
        .open()
        .or(() -> input.shorted(expected, lastLine))
        .orElseGet(() -> bySlope(slope, percent));
  }

  private double ideal() {
    return Nernst.idealSlopeMillivoltsPerDecade(charge, celsius);
  }

  private static OptionalDouble slope(List<FaultReading> known) {
    if (decades(known) < LEAST_DECADES) {
      return OptionalDouble.empty();
    }
    double[] x = known.stream().mapToDouble(FaultReading::logarithm).toArray();
    double[] y = known.stream().mapToDouble(FaultReading::millivolts).toArray();
    return OptionalDouble.of(StraightLine.through(x, y).slope());
  }

  /** How far apart the known solutions are; they are sorted. */
  private static double decades(List<FaultReading> known) {
    return known.isEmpty() ? 0 : known.get(known.size() - 1).logarithm() - known.get(0).logarithm();
  }

  private Finding bySlope(OptionalDouble slope, OptionalDouble percent) {
    if (slope.isEmpty()) {
      return new Untold(
          new Reason(
              "standards-too-few",
              "there are no two known solutions a factor of two or more apart",
              "Read a second standard, a decade away if there is one."));
    }
    double share = percent.orElseThrow();
    String seen =
        String.format(
            Locale.ROOT,
            "the potential changes by %.2f mV per decade, %.1f %% of the ideal %.2f",
            slope.getAsDouble(),
            share,
            ideal());
    if (Math.abs(share) < NO_ANSWER_PERCENT) {
      return new Faulty(
          Fault.DEAD,
          percent,
          new Reason(
              Fault.DEAD.code(),
              seen + ": the electrode does not answer",
              "Look whether its cap is off and it stands in the solution, whether the membrane is"
                  + " torn, dry or fouled, and whether the standards are what they are said to be."
                  + " Soak it and try again; if it stays, change the membrane or the electrode."));
    }
    if (share < 0) {
      return new Faulty(
          Fault.REVERSED,
          percent,
          new Reason(
              Fault.REVERSED.code(),
              seen + ": it goes the wrong way",
              "Look whether electrode and reference are swapped at the meter, whether the sign gets"
                  + " lost on the way, whether the ion's charge is set right, and whether standards"
                  + " were swapped."));
    }
    return new Answering(share);
  }
}
