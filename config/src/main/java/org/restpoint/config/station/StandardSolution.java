package org.restpoint.config.station;

import java.time.LocalDate;
import java.util.Collections;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;

/**
 * A standard solution.
 *
 * @param name what instructions call it
 * @param value what its label says
 * @param lot the lot's mark, if any
 * @param expires the last day it may be used
 */
public record StandardSolution(
    String name, Value value, Optional<String> lot, Optional<LocalDate> expires) {

  /** What a standard's label says. */
  public sealed interface Value {

    /**
     * So much of the ion.
     *
     * @param concentration above zero
     * @param basis {@code as-N} or {@code as-ion}; empty where the analyte leaves no choice
     * @param relativeUncertainty standard uncertainty as a share of the concentration, 0 to 1
     */
    record OfConcentration(
        Quantity concentration, Optional<String> basis, double relativeUncertainty)
        implements Value {

      /** Checks the ranges. */
      public OfConcentration {
        if (!(concentration.value() > 0)) {
          throw new IllegalArgumentException("a standard is above zero: " + concentration);
        }
        if (!(relativeUncertainty >= 0 && relativeUncertainty <= 1)) {
          throw new IllegalArgumentException("a share is 0 to 1: " + relativeUncertainty);
        }
      }
    }

    /**
     * A pH buffer of a known recipe, whose pH at each temperature is published.
     *
     * @param buffer the buffer's name from the vocabulary
     * @param phUncertainty standard uncertainty in pH, 0 to 1
     */
    record OfBuffer(String buffer, double phUncertainty) implements Value {

      /** Checks the range. */
      public OfBuffer {
        checkUncertainty(phUncertainty);
      }
    }

    /**
     * One pH at every temperature.
     *
     * @param ph 0 to 14
     * @param phUncertainty standard uncertainty in pH, 0 to 1
     */
    record OfPh(double ph, double phUncertainty) implements Value {

      /** Checks the ranges. */
      public OfPh {
        checkPh(ph);
        checkUncertainty(phUncertainty);
      }
    }

    /**
     * A pH for each of some temperatures, as a maker prints it on the label.
     *
     * @param phByCelsius pH, 0 to 14, by temperature in °C; two or more, in ascending order
     * @param phUncertainty standard uncertainty in pH, 0 to 1
     */
    record OfPhTable(NavigableMap<Double, Double> phByCelsius, double phUncertainty)
        implements Value {

      /** Copies the table and checks the ranges. */
      public OfPhTable {
        phByCelsius = Collections.unmodifiableNavigableMap(new TreeMap<>(phByCelsius));
        if (phByCelsius.size() < 2) {
          throw new IllegalArgumentException(
              "a table has two temperatures or more: " + phByCelsius);
        }
        phByCelsius.values().forEach(Value::checkPh);
        checkUncertainty(phUncertainty);
      }
    }

    private static void checkPh(double ph) {
      if (!(ph >= 0 && ph <= 14)) {
        throw new IllegalArgumentException("the pH of a standard is 0 to 14: " + ph);
      }
    }

    private static void checkUncertainty(double phUncertainty) {
      if (!(phUncertainty >= 0 && phUncertainty <= 1)) {
        throw new IllegalArgumentException(
            "a standard's pH is uncertain by 0 to 1: " + phUncertainty);
      }
    }
  }
}
