package org.restpoint.acquisition.probe;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalDouble;
import org.restpoint.stability.chemistry.Analyte;
import org.restpoint.stability.chemistry.Concentration;

/**
 * A standard solution of a probe's analyte.
 *
 * @param name what instructions call it
 * @param content what it holds
 * @param expires the last day it may be used
 */
public record Standard(String name, Content content, Optional<LocalDate> expires) {

  /** A standard of a concentration, known to a share of it. */
  public static Standard of(
      String name,
      Concentration concentration,
      Analyte analyte,
      double relativeUncertainty,
      Optional<LocalDate> expires) {
    Scale scale = new Scale.OfConcentration(analyte, concentration.unit(), concentration.basis());
    return new Standard(
        name, new Content.Constant(scale, concentration.value(), relativeUncertainty), expires);
  }

  /** What it holds at a temperature; empty where nobody knows. */
  public Optional<Portion> at(double celsius) {
    return content.at(celsius);
  }

  /**
   * What a standard holds at one temperature.
   *
   * @param value as its label or its table counts it
   * @param scale what that is counted in
   * @param relativeUncertainty standard uncertainty of the concentration as a share of it
   */
  public record Portion(double value, Scale scale, double relativeUncertainty) {

    /** The concentration in mol/L of the ion; of pH the activity. */
    public double molesPerLitre() {
      return scale.molesPerLitre(value);
    }
  }

  /** What a standard holds. */
  public sealed interface Content {

    /** What it holds at a temperature; empty where nobody knows. */
    Optional<Portion> at(double celsius);

    /**
     * The same at every temperature.
     *
     * @param scale what its label is counted in
     * @param value what its label says
     * @param relativeUncertainty standard uncertainty as a share of it
     */
    record Constant(Scale scale, double value, double relativeUncertainty) implements Content {

      @Override
      public Optional<Portion> at(double celsius) {
        return Optional.of(new Portion(value, scale, relativeUncertainty));
      }
    }

    /**
     * A pH buffer.
     *
     * @param table its pH by temperature
     * @param uncertainty standard uncertainty of its pH
     */
    record Buffer(PhTable table, double uncertainty) implements Content {

      @Override
      public Optional<Portion> at(double celsius) {
        OptionalDouble ph = table.ph(celsius);
        return ph.isPresent()
            ? Optional.of(
                new Portion(ph.getAsDouble(), new Scale.OfPh(), Math.log(10) * uncertainty))
            : Optional.empty();
      }
    }
  }

  /** The pH of a buffer by its temperature. */
  @FunctionalInterface
  public interface PhTable {

    /** The pH at a temperature in °C; empty beyond the temperatures that it is known for. */
    OptionalDouble ph(double celsius);
  }
}
