package org.restpoint.stability.guidance;

import org.restpoint.stability.uncertainty.Source.Quantity;

/** What a table reckons from a number. */
public sealed interface Formula {

  /**
   * A rate of nitrogen for what a soil lacks.
   *
   * <p>{@code N = max(0, (c − x)·f)}: N in lb N/acre, x the soil's nitrate in mg/kg as N, c the
   * critical one in mg/kg, f in lb N/acre for each mg/kg. Its expanded uncertainty is {@code f·U}:
   * c and f count as exact, since they are a rule.
   *
   * <p>Edge results: at c and above, N = 0 without an uncertainty. Below a limit ({@code <}) there
   * is no rate, only a range; above one ({@code >}) the rate is 0 where the limit less U is at c or
   * above, and otherwise there is only a range. Reference: Iowa State University Extension, PM 1714
   * and CROP 3140, see {@link PublishedTables#lateSpringSoil}.
   *
   * @param critical c, mg/kg, above zero
   * @param factor f, above zero
   */
  record Shortfall(double critical, double factor) implements Formula {

    public Shortfall {
      if (!(critical > 0 && factor > 0) || Double.isInfinite(critical * factor)) {
        throw new IllegalArgumentException(
            "a critical number and a factor above zero, not " + critical + " and " + factor);
      }
    }
  }

  /**
   * The amount on an area, by {@link org.restpoint.stability.preparation.SoilProfile} of one layer.
   *
   * @param bulkDensity oven-dry mass by volume in the field, g/cm3, above zero
   */
  record OnArea(Quantity bulkDensity) implements Formula {}
}
