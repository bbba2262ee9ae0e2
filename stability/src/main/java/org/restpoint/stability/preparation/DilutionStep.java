package org.restpoint.stability.preparation;

/**
 * One step of a dilution: an aliquot is brought to the volume of a flask. Refuses, with an {@link
 * IllegalArgumentException}, a flask smaller than the aliquot.
 *
 * @param aliquot what is taken
 * @param flask what it is made up to
 */
public record DilutionStep(Volume aliquot, Volume flask) {

  public DilutionStep {
    if (flask.millilitres() < aliquot.millilitres()) {
      throw new IllegalArgumentException(
          aliquot.millilitres()
              + " mL are made up to a larger volume, not to "
              + flask.millilitres()
              + " mL");
    }
  }
}
