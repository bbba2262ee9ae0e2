package org.restpoint.acquisition.probe;

/** The temperature of the solution an electrode stands in, as far as it is known. */
public sealed interface Temperature {

  /**
   * It is known.
   *
   * @param celsius the temperature in °C
   * @param standardUncertaintyKelvin how well, k = 1
   * @param stale whether it is older than allowed and was let pass
   */
  record Known(double celsius, double standardUncertaintyKelvin, boolean stale)
      implements Temperature {}

  /**
   * It is not known.
   *
   * @param why what is missing and where, one sentence without its full stop
   * @param remedy what to do
   */
  record Missing(String why, String remedy) implements Temperature {}
}
