package org.restpoint.stability.addition;

/**
 * A potential at rest after so much standard in all. Refuses, with an {@link
 * IllegalArgumentException}, numbers out of range.
 *
 * @param addedMillilitres all that was added up to here, mL, 0 or above
 * @param standardUncertaintyMillilitres u of it, mL, 0 or above; without the delivery's scale error
 * @param millivolts the potential, mV
 * @param standardUncertaintyMillivolts u of it, mV, above zero; without an offset common to all
 */
public record GranPoint(
    double addedMillilitres,
    double standardUncertaintyMillilitres,
    double millivolts,
    double standardUncertaintyMillivolts) {

  public GranPoint {
    if (!(addedMillilitres >= 0 && standardUncertaintyMillilitres >= 0)
        || !Double.isFinite(addedMillilitres + standardUncertaintyMillilitres)) {
      throw new IllegalArgumentException("an added volume and its uncertainty are 0 or above");
    }
    if (!Double.isFinite(millivolts)
        || !(standardUncertaintyMillivolts > 0)
        || Double.isInfinite(standardUncertaintyMillivolts)) {
      throw new IllegalArgumentException(
          "a potential is a number with an uncertainty above zero, which weighs it");
    }
  }
}
