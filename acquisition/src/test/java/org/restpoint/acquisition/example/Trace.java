package org.restpoint.acquisition.example;

/** The potential of an electrode since it was moved into a solution. */
@FunctionalInterface
interface Trace {

  /** The potential in mV so many seconds later. */
  double millivolts(double seconds);
}
