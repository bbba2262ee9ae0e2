package org.restpoint.stability.settle1;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * One electrode read again and again. Invented: the curves are those of {@link Settle1}, but all of
 * one model, whose times belong to the electrode and scatter from reading to reading.
 *
 * <pre>
 *   times = own·(1 or own ratio, where c falls)·level·e^(0.25·g)     g ~ N(0, 1)
 * </pre>
 *
 * Drawn once: temperature, slope, model with its parameters, the ratio by which it is slower where
 * the concentration falls, logU(½, 2), and the noise. Drawn for each reading: the step, and the
 * scatter. A new membrane has its own model, parameters and ratio.
 */
final class OneElectrode {

  /** Scatter of the times between readings, in nepers. */
  static final double SCATTER = 0.25;

  private final Random random;
  private final double kelvin;
  private final double slope;
  private final Noise noise;
  private Model model = Model.MEMBRANE;
  private long parameters;
  private double slowerWhereItFalls;

  private OneElectrode(long seed) {
    this.random = new Random(seed);
    this.kelvin = Draw.uniform(random, 283.15, 303.15);
    this.slope = Settle1.slope(random, kelvin);
    this.noise = Noise.draw(random);
    newMembrane();
  }

  private void newMembrane() {
    model = Model.draw(random);
    parameters = random.nextLong();
    slowerWhereItFalls = Draw.logUniform(random, 0.5, 2);
  }

  private Curve read() {
    double size = Draw.uniform(random, 0.1, 2);
    boolean up = random.nextBoolean();
    double after = Draw.uniform(random, -5, -1);
    Step step = new Step(kelvin, slope, up ? after - size : after + size, after);
    double scatter = StrictMath.exp(SCATTER * random.nextGaussian());
    double slower = Settle1.slower(after) * scatter * (up ? 1 : slowerWhereItFalls);
    Response response = model.response(new Random(parameters), slower);
    Trace trace = noise.readings(random, step, response, Settle1.SECONDS);
    return new Curve(model, step, response, noise, trace);
  }

  /** So many readings with the same membrane. */
  static List<Curve> readings(long seed, int count) {
    return readings(seed, count, count);
  }

  /** So many readings, with a new membrane after some of them. */
  static List<Curve> readings(long seed, int count, int newMembraneAfter) {
    OneElectrode electrode = new OneElectrode(seed);
    List<Curve> curves = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      if (i == newMembraneAfter) {
        electrode.newMembrane();
      }
      curves.add(electrode.read());
    }
    return curves;
  }
}
