package org.restpoint.acquisition.probe;

import org.restpoint.stability.chemistry.Analyte;
import org.restpoint.stability.chemistry.Basis;
import org.restpoint.stability.chemistry.Concentration;
import org.restpoint.stability.chemistry.ConcentrationUnit;

/** What a probe's results are counted in. */
public sealed interface Scale {

  /** The unit, a UCUM code. */
  String unit();

  /** {@code as-N} or {@code as-ion}. */
  String basis();

  /** What is measured, for a person. */
  String measurand();

  /** The value of a concentration above zero, given in mol/L of the ion. */
  double of(double molesPerLitre);

  /** The concentration in mol/L of the ion that has this value. */
  double molesPerLitre(double value);

  /**
   * A concentration.
   *
   * @param analyte the ion
   * @param in its unit
   * @param counted what a mass is the mass of
   */
  record OfConcentration(Analyte analyte, ConcentrationUnit in, Basis counted) implements Scale {

    @Override
    public String unit() {
      return in.code();
    }

    @Override
    public String basis() {
      return counted.code();
    }

    @Override
    public String measurand() {
      return analyte.name();
    }

    @Override
    public double of(double molesPerLitre) {
      return molesPerLitre / molesPerLitre(1);
    }

    @Override
    public double molesPerLitre(double value) {
      return new Concentration(value, in, counted).molesPerLitre(analyte);
    }
  }

  /** pH = −log10 of the activity of the hydrogen ion in mol/L. */
  record OfPh() implements Scale {

    @Override
    public String unit() {
      return "[pH]";
    }

    @Override
    public String basis() {
      return Basis.AS_ION.code();
    }

    @Override
    public String measurand() {
      return "pH";
    }

    @Override
    public double of(double molesPerLitre) {
      return -Math.log10(molesPerLitre);
    }

    @Override
    public double molesPerLitre(double value) {
      return Math.pow(10, -value);
    }
  }
}
