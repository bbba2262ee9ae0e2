package org.restpoint.adapters.simulated;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Iterator;

/**
 * What the membrane shows of the solutions it was in: steps laid over each other.
 *
 * <p>Each step goes on by itself as the {@link ResponseModel} says, also when the electrode is
 * moved before it is at rest (Duhamel's principle of linear systems). With solutions x0, x1, …, xn,
 * the i-th since ti, and g the share of a step that is still to come,
 *
 * <pre>x(t) = x0 · g(t − t1) + Σ xi · [g(t − ti+1) − g(t − ti)] + xn · [1 − g(t − tn)]</pre>
 *
 * that is an average of all solutions whose weights are never below 0, so a concentration stays
 * above 0. For the film it is the same as beginning anew from what the film holds.
 *
 * <p>Edges: at rest in its first solution for ever before; of more than 32 solutions the oldest is
 * forgotten, as if the electrode had been at rest in the next one; where g has not come to 0 by
 * then, what is shown jumps by that share of the step.
 *
 * <p>For one thread.
 */
final class Membrane {

  private static final int MOST_SOLUTIONS = 32;

  private record Solution(double sinceMillis, double x) {}

  private final ResponseModel model;
  private final Deque<Solution> solutions = new ArrayDeque<>();

  Membrane(ResponseModel model, double molesPerLitre) {
    this.model = model;
    solutions.add(new Solution(0, scaled(molesPerLitre)));
  }

  /** From now on it is in another solution; times do not go back. */
  void immerse(double millis, double molesPerLitre) {
    if (solutions.size() == MOST_SOLUTIONS) {
      solutions.removeFirst();
    }
    solutions.addLast(new Solution(millis, scaled(molesPerLitre)));
  }

  /** log10 of what it shows, in mol/L; not before the latest immersion. */
  double log10MolesPerLitre(double millis) {
    double shown = 0;
    double still = 1;
    Iterator<Solution> latestFirst = solutions.descendingIterator();
    while (latestFirst.hasNext()) {
      Solution solution = latestFirst.next();
      double left = latestFirst.hasNext() ? model.left(millis - solution.sinceMillis()) : 0;
      shown += solution.x() * (still - left);
      still = left;
    }
    return model.isOfConcentrations() ? Math.log10(shown) : shown;
  }

  private double scaled(double molesPerLitre) {
    return model.isOfConcentrations() ? molesPerLitre : Math.log10(molesPerLitre);
  }
}
