package org.restpoint.adapters.simulated;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.restpoint.stability.electrode.Nernst;
import org.restpoint.stability.reading.Reading;

/**
 * An electrode that comes to rest in the solutions it is put into.
 *
 * <p>E = offset + creep · t + S · log10(x) + noise, with
 *
 * <ul>
 *   <li>E in mV, t the time since the start, the creep in mV/h;
 *   <li>S the slope in mV/decade: the ideal slope at the solution's temperature times the
 *       electrode's percentage; negative for an anion;
 *   <li>x what the membrane shows of its solutions, in mol/L, by the {@link ResponseModel}; at rest
 *       it is the solution (ionic strength is taken as constant).
 * </ul>
 *
 * <p>Edges: the temperature is taken on at once. Faults then disturb E, in their order, and the
 * display rounds. A fault that slows the electrode slows its own time: while it responds n times
 * slower, a second counts 1/n for every step underway. The noise of a reading depends on how many
 * were taken before it, and not on faults.
 *
 * <p>For one thread.
 */
public final class SimulatedElectrode implements SimulatedProbe {

  private static final double NANOS_PER_HOUR = 3.6e12;
  private static final double NANOS_PER_MILLI = 1e6;

  private final ElectrodeTraits traits;
  private final Swing swing;
  private final Instant start;
  private final Membrane membrane;
  private final NoiseSource noise;
  private final FaultChance chance;
  private double celsius;
  private Instant reached;
  private double ownMillis;
  private double slowness = 1;

  /** An electrode at rest in its first beaker. */
  public SimulatedElectrode(ElectrodeTraits traits, Beaker first, Swing swing, Instant start) {
    this.traits = traits;
    this.swing = swing;
    this.start = start;
    this.membrane = new Membrane(traits.response(), first.molesPerLitre());
    this.noise = new NoiseSource(traits.noise(), traits.seed());
    this.chance = new FaultChance(traits.seed());
    this.celsius = first.celsius();
    this.reached = start;
  }

  /** Moves it to another beaker; a time before the latest reading or move counts as that one. */
  public void immerse(Instant time, Beaker next) {
    reach(time);
    membrane.immerse(ownMillis, next.molesPerLitre());
    celsius = next.celsius();
  }

  /** What the instrument shows at a time, a whole millisecond, without faults. */
  public Reading reading(Instant time) {
    return reading(time, List.of());
  }

  @Override
  public Reading reading(Instant time, List<Fault.OfElectrode> faults) {
    return shown(time, faults, noise.next());
  }

  @Override
  public Reading extraReading(Instant time, List<Fault.OfElectrode> faults) {
    return shown(time, faults, traits.noise().whiteMillivolts() * chance.gaussian());
  }

  private Reading shown(Instant time, List<Fault.OfElectrode> faults, double noiseMillivolts) {
    reach(time);
    slowness = faults.stream().mapToDouble(Fault.OfElectrode::slowness).reduce(1, (a, b) -> a * b);
    Duration elapsed = Duration.between(start, time);
    double warmth = swing.celsius(celsius, elapsed);
    double slope =
        Nernst.idealSlopeMillivoltsPerDecade(traits.charge(), warmth)
            * (traits.slopePercent() / 100.0);
    double millivolts =
        traits.offsetMillivolts()
            + slope * membrane.log10MolesPerLitre(ownMillis)
            + traits.creepMillivoltsPerHour() * (elapsed.toNanos() / NANOS_PER_HOUR)
            + noiseMillivolts;
    for (Fault.OfElectrode fault : faults) {
      millivolts = fault.disturbed(millivolts, chance);
    }
    return Reading.of(
        time, traits.display().millivolts(millivolts), traits.display().celsius(warmth));
  }

  /**
   * Lets the electrode's own time pass; it runs as slowly as the faults at the reading before say.
   */
  private void reach(Instant time) {
    if (time.isAfter(reached)) {
      ownMillis += Duration.between(reached, time).toNanos() / NANOS_PER_MILLI / slowness;
      reached = time;
    }
  }
}
