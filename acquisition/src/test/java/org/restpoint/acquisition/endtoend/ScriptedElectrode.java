package org.restpoint.acquisition.endtoend;

import java.util.Locale;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.restpoint.adapters.serial.PseudoTerminal;

/**
 * A meter with an electrode at the other end of a serial line: sends a line every 50 ms, rounded to
 * 0.01 mV and 0.1 °C. Moved to another solution, its film follows by diffusion with a time constant
 * of 0.1 s, so it is at rest to far below the rounding after 2 s.
 */
final class ScriptedElectrode implements AutoCloseable {

  /** What the meter rounds potentials to. */
  static final double STEP_MILLIVOLTS = 0.01;

  private static final long EVERY_MILLIS = 50;
  private static final double TIME_CONSTANT_SECONDS = 0.1;

  private final CountDownLatch end = new CountDownLatch(1);
  private double solution;
  private double filmAtMove;
  private double celsius;
  private long movedNanos = System.nanoTime();

  /** An electrode that has stood in a solution of so many mg/L as N for long. */
  ScriptedElectrode(double milligramsPerLitre, double celsius) {
    this.solution = milligramsPerLitre;
    this.filmAtMove = milligramsPerLitre;
    this.celsius = celsius;
  }

  /** Sends by itself from now on. */
  ScriptedElectrode sendingTo(PseudoTerminal meter) {
    Thread sending =
        new Thread(
            () -> {
              try {
                do {
                  meter.send(line());
                } while (!end.await(EVERY_MILLIS, TimeUnit.MILLISECONDS));
              } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
              }
            },
            "electrode");
    sending.setDaemon(true);
    sending.start();
    return this;
  }

  /** Puts it into another solution. */
  synchronized void moveTo(double milligramsPerLitre, double atCelsius) {
    filmAtMove = film();
    movedNanos = System.nanoTime();
    solution = milligramsPerLitre;
    celsius = atCelsius;
  }

  private double film() {
    double seconds = (System.nanoTime() - movedNanos) / 1e9;
    return solution + (filmAtMove - solution) * Math.exp(-seconds / TIME_CONSTANT_SECONDS);
  }

  /** The line it sends now. */
  synchronized String line() {
    return String.format(
        Locale.ROOT,
        "E=%.2f mV T=%.1f C\r\n",
        NitrateElectrode.millivolts(film(), celsius),
        celsius);
  }

  @Override
  public void close() {
    end.countDown();
  }
}
