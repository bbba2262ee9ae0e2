package org.restpoint.stability.suspicion;

/**
 * How a standard came to rest, or did not.
 *
 * @param settled whether it came to rest within its time
 * @param seconds how long it took, or was waited for, 0 or above
 * @param spreadMillivolts largest minus smallest of the last readings, mV, 0 or above
 * @param creeping whether it still crept when it was taken
 * @param foretold whether its potential is a forecast
 */
public record HowItRested(
    boolean settled, double seconds, double spreadMillivolts, boolean creeping, boolean foretold) {

  public HowItRested {
    if (!(seconds >= 0) || !(spreadMillivolts >= 0)) {
      throw new IllegalArgumentException("a time and a spread are 0 or above");
    }
  }
}
