package org.restpoint.acquisition.probe;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.restpoint.acquisition.event.Result.Amount;
import org.restpoint.acquisition.event.Result.Interference;
import org.restpoint.stability.activity.ActivityCoefficient;
import org.restpoint.stability.activity.ActivityModel;
import org.restpoint.stability.activity.Ion;
import org.restpoint.stability.activity.IonicStrength;
import org.restpoint.stability.calibration.RestedSample;
import org.restpoint.stability.interference.Background;
import org.restpoint.stability.interference.Interferent;

/**
 * What is in samples and standards beside the ion: the salt that sets its activity, and other ions
 * that the electrode answers to.
 *
 * @param salt the salt; empty where an adjustor makes samples and standards alike
 * @param charge charge number of the ion
 * @param known interfering ions of known concentration: results are corrected for them
 * @param atMost interfering ions of which only a limit is known: what they could do is told
 */
public record Matrix(
    Optional<Salt> salt, int charge, List<Interferent> known, List<Interferent> atMost) {

  /**
   * A correction of half of what is left is as uncertain as its selectivity coefficient, which is
   * known to its order of magnitude; our choice.
   */
  private static final double LARGE_SHARE = 0.5;

  public Matrix {
    known = List.copyOf(known);
    atMost = List.copyOf(atMost);
  }

  /**
   * Nothing beside the ion that samples and standards do not share.
   *
   * @param charge charge number of the ion
   */
  public static Matrix alike(int charge) {
    return new Matrix(Optional.empty(), charge, List.of(), List.of());
  }

  /**
   * The salt in samples and standards.
   *
   * @param ion the ion measured
   * @param model the formula for its activity coefficient
   * @param ofSamples ionic strength of the samples, mol/L
   * @param relativeUncertainty its standard uncertainty as a share of it
   * @param ofStandards ionic strength of the standards, mol/L; empty where it is that of each
   *     standard's own salt
   */
  public record Salt(
      Ion ion,
      ActivityModel model,
      double ofSamples,
      double relativeUncertainty,
      OptionalDouble ofStandards) {

    ActivityCoefficient inSample(double celsius) {
      return model.coefficient(ion, ofSamples, relativeUncertainty, within(celsius));
    }

    double inStandard(double molesPerLitre, double celsius) {
      double own = IonicStrength.ofSalt(ion.charge(), 1).molesPerLitre() * molesPerLitre;
      double strength = ofStandards.orElse(Math.min(own, IonicStrength.HIGHEST_MOLES_PER_LITRE));
      return model.coefficient(ion, strength, within(celsius)).value();
    }

    /**
     * The models answer from −10 to 100 °C; hotter, the coefficient of 100 °C is told as doubtful.
     */
    private static double within(double celsius) {
      return Math.max(-10, Math.min(100, celsius));
    }
  }

  /** Activity coefficient of the ion in a standard. */
  double coefficientOfStandard(double molesPerLitre, double celsius) {
    return salt.map(s -> s.inStandard(molesPerLitre, celsius)).orElse(1.0);
  }

  /** The sample with what is known of it. */
  RestedSample of(RestedSample sample) {
    RestedSample with = sample;
    if (salt.isPresent()) {
      ActivityCoefficient gamma = salt.get().inSample(sample.celsius());
      with = with.withActivityCoefficient(gamma.value(), gamma.relativeStandardUncertainty());
    }
    if (!known.isEmpty()) {
      Background background = Background.of(charge, known);
      with = with.withBackground(background.molesPerLitre(), background.standardUncertainty());
    }
    return with;
  }

  /** What the interfering ions do to a result, in the unit it is counted in. */
  List<Interference> interference(Scale scale, Amount amount, RestedSample sample) {
    List<Interference> all = new ArrayList<>();
    for (Interferent ion : known) {
      all.add(told(ion, scale, amount, sample, true));
    }
    for (Interferent ion : atMost) {
      all.add(told(ion, scale, amount, sample, false));
    }
    return all;
  }

  private Interference told(
      Interferent ion, Scale scale, Amount amount, RestedSample sample, boolean corrected) {
    double value = amount.value();
    double bias = scale.of(scale.molesPerLitre(value) + share(List.of(ion), sample)) - value;
    return new Interference(
        ion.name(),
        bias,
        value > 0 && !(scale instanceof Scale.OfPh)
            ? OptionalDouble.of(100 * bias / value)
            : OptionalDouble.empty(),
        corrected);
  }

  /** As how much of the ion others count, mol/L. */
  private double share(List<Interferent> ions, RestedSample sample) {
    return Background.of(charge, ions).molesPerLitre() / sample.activityCoefficient();
  }

  /** What a result must carry a flag for. */
  List<String> flags(
      Scale scale, RestedSample sample, List<Interference> interference, Amount amount) {
    List<String> flags = new ArrayList<>();
    if (salt.isPresent() && salt.get().inSample(sample.celsius()).beyondValidity()) {
      flags.add("activity-beyond");
    }
    if (share(known, sample) > LARGE_SHARE * scale.molesPerLitre(amount.value())) {
      flags.add("interference-large");
    }
    double untold =
        interference.stream()
            .filter(one -> !one.corrected())
            .mapToDouble(one -> Math.abs(one.bias()))
            .sum();
    if (untold > amount.uncertainty()) {
      flags.add("interference");
    }
    return flags;
  }
}
