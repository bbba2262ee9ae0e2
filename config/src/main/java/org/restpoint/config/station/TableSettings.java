package org.restpoint.config.station;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** A guidance table: one that comes with the program, or one that the file writes out. */
public sealed interface TableSettings {

  /**
   * One that comes with the program.
   *
   * @param table its name
   * @param critical the critical number that the file gives, where it gives one
   * @param bulkDensity that of the soil, where the table needs one
   */
  record Published(String table, Optional<Critical> critical, Optional<BulkDensity> bulkDensity)
      implements TableSettings {}

  /**
   * A critical number in place of the table's own.
   *
   * @param milligramsPerKilogram above zero
   * @param because why
   */
  record Critical(double milligramsPerKilogram, String because) {}

  /**
   * Oven-dry mass of the soil by its volume in the field.
   *
   * @param gramsPerCubicCentimetre above zero
   * @param relativeUncertainty its standard uncertainty (k = 1) as a share of it, 0 to 1
   */
  record BulkDensity(double gramsPerCubicCentimetre, double relativeUncertainty) {}

  /**
   * One that the file writes out.
   *
   * @param title what it is about
   * @param source where it was published
   * @param region where it holds
   * @param season when in the year, or for which crop
   * @param layer from where in the soil a sample must be; only of soil, and there always
   * @param validUntil the last day it holds; empty where no end is given
   * @param analyte the ion
   * @param basis what a mass counts, where that is a choice
   * @param bands upwards, the last one without a limit; at least two
   */
  record Own(
      String title,
      String source,
      String region,
      String season,
      Optional<Layer> layer,
      Optional<LocalDate> validUntil,
      String analyte,
      Optional<String> basis,
      List<Band> bands)
      implements TableSettings {

    /** Copies the bands. */
    public Own {
      bands = List.copyOf(bands);
    }

    /** Whether its numbers are of dry soil, or else of water. */
    public boolean ofSoil() {
      return layer.isPresent();
    }
  }

  /**
   * A layer of soil.
   *
   * @param topCentimetres its upper edge below the ground, 0 or above
   * @param bottomCentimetres its lower edge, above the upper one
   */
  record Layer(double topCentimetres, double bottomCentimetres) {}

  /**
   * What numbers up to a limit mean.
   *
   * @param below the limit, which is not in the band itself; empty for the last one
   * @param says what such a number means
   * @param caution what to mind, where there is something of its own
   */
  record Band(Optional<Quantity> below, String says, Optional<String> caution) {}
}
