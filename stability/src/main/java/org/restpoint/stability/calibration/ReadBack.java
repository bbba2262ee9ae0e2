package org.restpoint.stability.calibration;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.restpoint.stability.electrode.Nernst;
import org.restpoint.stability.fit.Covariance;
import org.restpoint.stability.uncertainty.Budget;
import org.restpoint.stability.uncertainty.MeasurementModel;
import org.restpoint.stability.uncertainty.Source;
import org.restpoint.stability.uncertainty.Source.Joint;
import org.restpoint.stability.uncertainty.Source.Quantity;

/**
 * A concentration read back from a response curve.
 *
 * <p>{@code x = (E − E0 − m·(T − Tref))/S}, {@code log10 A = p + (x − p)·Tref/T}, {@code c = (A − b
 * − B)/γ}: A is the apparent activity, B what interfering ions add to it, γ the activity
 * coefficient.
 *
 * <p>Its uncertainty has these sources: the potential at rest, the calibration line, the standard
 * solutions, the temperature, its compensation and coefficient, the activity coefficient and the
 * interfering ions.
 *
 * <p>Edge results: an A that does not exceed b + B leaves nothing of the ion: c is 0 or below,
 * which is said as it is and has an uncertainty all the same; a potential hundreds of decades away
 * from the curve has a finite logarithm whose A is 0 or infinite.
 */
public final class ReadBack {

  private static final int POTENTIAL = 0;
  private static final int OFFSET = 1;
  private static final int SLOPE = 2;
  private static final int LOW_END = 3;
  private static final int OFFSET_OF_STANDARDS = 4;
  private static final int SLOPE_OF_STANDARDS = 5;
  private static final int LOW_END_OF_STANDARDS = 6;
  private static final int CELSIUS = 7;
  private static final int PIVOT = 8;
  private static final int COEFFICIENT = 9;
  private static final int ACTIVITY_COEFFICIENT = 10;
  private static final int BACKGROUND = 11;

  private final ResponseCurve curve;
  private final List<Source> sources;
  private final double[] estimates;

  ReadBack(ResponseCurve curve, RestedSample sample) {
    this.curve = curve;
    this.sources = sources(curve, sample);
    this.estimates =
        sources.stream().flatMap(s -> s.estimates().stream()).mapToDouble(d -> d).toArray();
  }

  private static List<Source> sources(ResponseCurve curve, RestedSample sample) {
    Compensation compensation = curve.compensation();
    double warmer = sample.celsius() - curve.referenceCelsius();
    double uncompensated =
        (sample.millivolts()
                - curve.offsetMillivolts()
                - compensation.millivoltsPerKelvin() * warmer)
            / curve.slopeMillivoltsPerDecade();
    List<Source> all = new ArrayList<>();
    all.add(
        Quantity.of(
            "potential at rest",
            "mV",
            sample.millivolts(),
            sample.standardUncertaintyMillivolts()));
    all.add(
        Joint.of(
            "calibration line",
            List.of(
                curve.offsetMillivolts(),
                curve.slopeMillivoltsPerDecade(),
                curve.lowEndMolesPerLitre()),
            rows(curve.fromLine())));
    all.add(Joint.of("standard solutions", List.of(0.0, 0.0, 0.0), rows(curve.fromStandards())));
    all.add(
        Quantity.of("temperature", "Cel", sample.celsius(), sample.standardUncertaintyKelvin()));
    all.add(
        Quantity.of(
            "temperature compensation",
            "decades",
            compensation.pivotDecades(),
            compensation.pivotUncertaintyDecades(uncompensated)));
    all.add(
        Quantity.of(
            "temperature coefficient",
            "mV/K",
            compensation.millivoltsPerKelvin(),
            compensation.uncertaintyMillivoltsPerKelvin()));
    all.add(
        Quantity.of(
            "activity coefficient",
            "1",
            sample.activityCoefficient(),
            sample.activityCoefficient() * sample.relativeUncertaintyOfActivityCoefficient()));
    all.add(
        Quantity.of(
            "interfering ions",
            "mol/L",
            sample.backgroundMolesPerLitre(),
            sample.uncertaintyOfBackground()));
    return all;
  }

  private static List<List<Double>> rows(Covariance covariance) {
    int size = covariance.size();
    return IntStream.range(0, size)
        .mapToObj(row -> covariance.entries().subList(row * size, (row + 1) * size))
        .toList();
  }

  private double log10Apparent(double[] x) {
    double kelvin = Nernst.kelvin(x[CELSIUS]);
    double reference = Nernst.kelvin(curve.referenceCelsius());
    double abscissa =
        (x[POTENTIAL] - x[OFFSET] - x[OFFSET_OF_STANDARDS] - x[COEFFICIENT] * (kelvin - reference))
            / (x[SLOPE] + x[SLOPE_OF_STANDARDS]);
    return x[PIVOT] + (abscissa - x[PIVOT]) * reference / kelvin;
  }

  private double molesPerLitre(double[] x) {
    double apparent = Math.pow(10, log10Apparent(x));
    return (apparent - x[LOW_END] - x[LOW_END_OF_STANDARDS] - x[BACKGROUND])
        / x[ACTIVITY_COEFFICIENT];
  }

  /** Decimal logarithm of the apparent activity A, which counts all that the electrode sees. */
  public double log10ApparentActivity() {
    return log10Apparent(estimates);
  }

  /** The concentration c in mol/L; 0 or below where nothing is left of the ion. */
  public double molesPerLitre() {
    return molesPerLitre(estimates);
  }

  /** The concentration without the correction for interfering ions, mol/L. */
  public double uncorrectedMolesPerLitre() {
    double[] x = estimates.clone();
    x[BACKGROUND] = 0;
    return molesPerLitre(x);
  }

  /**
   * Decimal logarithm of the concentration in mol/L; not a number where nothing is left of the ion.
   */
  public double log10MolesPerLitre() {
    return Math.log10(molesPerLitre());
  }

  /** u(c)/c, k = 1; not a number where nothing is left of the ion. */
  public double relativeStandardUncertainty() {
    Budget budget = Budget.of("c", "mol/L", sources, this::molesPerLitre);
    return budget.value() > 0 ? budget.standardUncertainty() / budget.value() : Double.NaN;
  }

  /** Where its uncertainty comes from, for a measurand that has further sources. */
  public List<Source> sources() {
    return sources;
  }

  /** The concentration in mol/L as a model of {@link #sources()}. */
  public MeasurementModel model() {
    return this::molesPerLitre;
  }

  /**
   * The budget of a measurand that follows from the concentration alone.
   *
   * @param measurand its name
   * @param unit its unit
   * @param ofMolesPerLitre how it follows: a factor for other units, −log10 for pH; finite at and
   *     near the concentration, otherwise an {@link ArithmeticException} is thrown
   */
  public Budget budget(String measurand, String unit, DoubleUnaryOperator ofMolesPerLitre) {
    return Budget.of(
        measurand, unit, sources, x -> ofMolesPerLitre.applyAsDouble(molesPerLitre(x)));
  }
}
