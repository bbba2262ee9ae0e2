package org.restpoint.adapters.simulated;

import java.time.Duration;
import java.time.Instant;
import java.util.Random;
import org.restpoint.stability.electrode.Nernst;
import org.restpoint.stability.reading.Reading;

/**
 * An electrode that comes to rest as the film of solution before its membrane is renewed by
 * diffusion.
 *
 * <p>E(t) = E1 + S · log10[1 − (1 − a0/a1) · e^(−t/τ)], with
 *
 * <ul>
 *   <li>E in mV, t the time since the immersion, τ the time constant;
 *   <li>S the slope in mV/decade: the ideal slope at the solution's temperature times the
 *       electrode's percentage; negative for an anion;
 *   <li>a1 the solution, a0 the film at the immersion, which is still the solution before where it
 *       had no time to renew, both in mol/L (ionic strength is taken as constant);
 *   <li>E1 = offset + S · log10(a1) the potential at rest.
 * </ul>
 *
 * <p>Edges: where a0 = a1 the potential is at rest at once; coming from the stronger solution takes
 * longer than coming from the weaker one, as at a bench; the temperature is taken on at once. Noise
 * and creep are added, then the instrument rounds. The noise of a reading depends on how many were
 * taken before it.
 *
 * <p>Reference: W. E. Morf, E. Lindner and W. Simon, Theoretical treatment of the dynamic response
 * of ion-selective membrane electrodes, Anal. Chem. 47 (1975) 1596.
 *
 * <p>For one thread.
 */
public final class SimulatedElectrode {

  private static final double NANOS_PER_HOUR = 3.6e12;

  private final ElectrodeTraits traits;
  private final Instant start;
  private final Random noise;
  private Beaker beaker;
  private Instant immersed;
  private double filmAtImmersion;

  /** An electrode at rest in its first beaker. */
  public SimulatedElectrode(ElectrodeTraits traits, Beaker first, Instant start) {
    this.traits = traits;
    this.start = start;
    this.noise = new Random(traits.seed());
    this.beaker = first;
    this.immersed = start;
    this.filmAtImmersion = first.molesPerLitre();
  }

  /** Moves it to another beaker; a time before the last immersion counts as that one. */
  public void immerse(Instant time, Beaker next) {
    filmAtImmersion = film(time);
    immersed = time.isBefore(immersed) ? immersed : time;
    beaker = next;
  }

  /** What the instrument shows at a time, a whole millisecond. */
  public Reading reading(Instant time) {
    double slope =
        Nernst.idealSlopeMillivoltsPerDecade(traits.charge(), beaker.celsius())
            * (traits.slopePercent() / 100.0);
    double potential = traits.offsetMillivolts() + slope * Math.log10(film(time));
    double creep =
        traits.creepMillivoltsPerHour()
            * (Duration.between(start, time).toNanos() / NANOS_PER_HOUR);
    double noisy = potential + creep + traits.noiseMillivolts() * noise.nextGaussian();
    return Reading.of(
        time,
        rounded(noisy, traits.millivoltDecimals()),
        rounded(beaker.celsius(), traits.celsiusDecimals()));
  }

  /** The film's concentration in mol/L: a1 · [1 − (1 − a0/a1) · e^(−t/τ)]. */
  private double film(Instant time) {
    double nanos = Math.max(0, Duration.between(immersed, time).toNanos());
    double left = Math.exp(-nanos / traits.timeConstant().toNanos());
    return beaker.molesPerLitre() - (beaker.molesPerLitre() - filmAtImmersion) * left;
  }

  private static double rounded(double value, int decimals) {
    double steps = Math.pow(10, decimals);
    return Math.rint(value * steps) / steps;
  }
}
