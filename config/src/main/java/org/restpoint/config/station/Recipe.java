package org.restpoint.config.station;

import java.util.Optional;

/**
 * How samples are prepared before they are read, so that what is read in the vessel can be given
 * for what was taken.
 */
public sealed interface Recipe {

  /** What instructions and sample records call it. */
  String name();

  /**
   * Soil in an extractant.
   *
   * @param name its name
   * @param portion how much soil is taken
   * @param extractant what it is shaken with
   * @param moisture the water in it; empty where nobody knows
   * @param dilution what the extract is diluted by before it is read
   * @param extract how the extract comes into the vessel
   * @param standard how the standards do
   */
  record Soil(
      String name,
      Portion portion,
      Volume extractant,
      Optional<Moisture> moisture,
      Optional<Dilution> dilution,
      Vessel extract,
      Vessel standard)
      implements Recipe {}

  /**
   * Water.
   *
   * @param name its name
   * @param dilution what the sample is diluted by before it is read
   * @param sample how it comes into the vessel
   * @param standard how the standards do
   */
  record Water(String name, Optional<Dilution> dilution, Vessel sample, Vessel standard)
      implements Recipe {}

  /**
   * A volume measured out.
   *
   * @param millilitres mL, above zero
   * @param withinMillilitres how far off it may be, either way; mL, 0 or above, less than the
   *     volume
   */
  record Volume(double millilitres, double withinMillilitres) {

    /** Checks the ranges. */
    public Volume {
      checkTolerance(millilitres, withinMillilitres);
    }
  }

  /** How much soil is taken. */
  sealed interface Portion {

    /** What its mass is the mass of. */
    Dryness dryness();

    /**
     * Level scoops.
     *
     * @param count how many, 1 or above
     * @param scoop the volume of one
     * @param gramsPerMillilitre density of the soil as it lies in the scoop, g/mL, above zero
     * @param uncertaintyGramsPerMillilitre its standard uncertainty, g/mL, 0 or above
     * @param densityFrom where the density comes from, for a person
     * @param dryness what the mass is the mass of
     */
    record Scoops(
        int count,
        Volume scoop,
        double gramsPerMillilitre,
        double uncertaintyGramsPerMillilitre,
        String densityFrom,
        Dryness dryness)
        implements Portion {

      /** Checks the count and the density. */
      public Scoops {
        if (count < 1) {
          throw new IllegalArgumentException("one scoop or more: " + count);
        }
        checkTolerance(gramsPerMillilitre, uncertaintyGramsPerMillilitre);
      }
    }

    /**
     * Weighed.
     *
     * @param grams g, above zero
     * @param withinGrams how far off it may be, either way; g, 0 or above, less than the mass
     * @param dryness what the mass is the mass of
     */
    record Weighed(double grams, double withinGrams, Dryness dryness) implements Portion {

      /** Checks the ranges. */
      public Weighed {
        checkTolerance(grams, withinGrams);
      }
    }
  }

  /** What a mass of soil is the mass of. */
  enum Dryness {
    /** As it came from the field. */
    AS_RECEIVED,
    /** Dried in air. */
    AIR_DRY
  }

  /**
   * The water in the soil that is taken.
   *
   * @param of what it is a percentage of
   * @param percent %, 0 or above; of the moist mass below 100
   * @param uncertaintyPercent its standard uncertainty, %, 0 or above
   */
  record Moisture(Of of, double percent, double uncertaintyPercent) {

    /** Checks the ranges. */
    public Moisture {
      if (!(percent >= 0) || (of == Of.MOIST_MASS && !(percent < 100))) {
        throw new IllegalArgumentException("no moisture: " + percent + " % of " + of);
      }
      if (!(uncertaintyPercent >= 0)) {
        throw new IllegalArgumentException("no uncertainty: " + uncertaintyPercent);
      }
    }

    /** What a moisture is a percentage of. */
    public enum Of {
      /** The oven-dry mass. */
      DRY_MASS,
      /** The moist mass. */
      MOIST_MASS
    }
  }

  /**
   * A part of a liquid made up to a flask.
   *
   * @param aliquot what is taken
   * @param flask what it is made up to, no less than that
   */
  record Dilution(Volume aliquot, Volume flask) {

    /** Checks that the one goes into the other. */
    public Dilution {
      if (flask.millilitres() < aliquot.millilitres()) {
        throw new IllegalArgumentException(aliquot + " is not made up to " + flask);
      }
    }
  }

  /** How a liquid comes into the vessel in which it is read. */
  sealed interface Vessel {

    /**
     * A volume of it, with what is added.
     *
     * @param volume the liquid itself
     * @param adjustor the ionic-strength adjustor, where any is added
     * @param flask what both are made up to, no less than they are, where they are
     */
    record Poured(Volume volume, Optional<Volume> adjustor, Optional<Volume> flask)
        implements Vessel {

      /** Checks that all of it goes into the flask. */
      public Poured {
        double inside = volume.millilitres() + adjustor.map(Volume::millilitres).orElse(0.0);
        if (flask.filter(to -> to.millilitres() < inside).isPresent()) {
          throw new IllegalArgumentException(inside + " mL do not go into " + flask);
        }
      }
    }

    /**
     * As it is; a standard then holds in the vessel what its label says.
     *
     * @param adjustorPercent how much of it is ionic-strength adjustor, % of the volume, 0 to 50
     */
    record AsItIs(double adjustorPercent) implements Vessel {

      /** Checks the range. */
      public AsItIs {
        if (!(adjustorPercent >= 0 && adjustorPercent <= 50)) {
          throw new IllegalArgumentException("no share of adjustor: " + adjustorPercent + " %");
        }
      }
    }
  }

  private static void checkTolerance(double value, double within) {
    if (!(value > 0) || !Double.isFinite(value) || !(within >= 0 && within < value)) {
      throw new IllegalArgumentException("no amount with its tolerance: " + value + " ± " + within);
    }
  }
}
