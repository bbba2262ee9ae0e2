package org.restpoint.stability.settle1;

import java.util.function.IntToDoubleFunction;

/** Hand-made curves, invented. */
final class Curves {

  private Curves() {}

  /** One that rests at 177.48 mV without drift and shows what it is told to less the rest. */
  static Curve showing(IntToDoubleFunction lessRest) {
    Step step = new Step(298.15, -59.16, -1, -3);
    Noise noise = new Noise(0, 0, 0.6, 0.01, 0);
    double[] millivolts = new double[Settle1.SECONDS];
    for (int t = 0; t < millivolts.length; t++) {
      millivolts[t] = Math.rint(100 * (step.restingMillivolts() + lessRest.applyAsDouble(t))) / 100;
    }
    return new Curve(Model.FILM_STIRRED, step, new Response.Film(5), noise, new Trace(millivolts));
  }
}
