package org.restpoint.acquisition.meaning;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.restpoint.config.file.KnownTable;
import org.restpoint.config.station.Quantity;
import org.restpoint.config.station.TableSettings;
import org.restpoint.config.station.TableSettings.BulkDensity;
import org.restpoint.config.station.TableSettings.Critical;
import org.restpoint.config.station.TableSettings.Own;
import org.restpoint.config.station.TableSettings.Published;
import org.restpoint.stability.chemistry.Analyte;
import org.restpoint.stability.chemistry.Basis;
import org.restpoint.stability.guidance.Band;
import org.restpoint.stability.guidance.Cautions;
import org.restpoint.stability.guidance.Depth;
import org.restpoint.stability.guidance.GuidanceTable;
import org.restpoint.stability.guidance.Measurand;
import org.restpoint.stability.guidance.PublishedTables;
import org.restpoint.stability.guidance.Scope;
import org.restpoint.stability.uncertainty.Source;

/** Translates the tables that a station file chose into those of the science. */
public final class GuidanceTerms {

  private GuidanceTerms() {}

  /** The tables that a station file may choose by name. */
  public static Map<String, KnownTable> known() {
    return Map.of(
        PublishedTables.US_DRINKING_WATER, new KnownTable(false, Set.of()),
        PublishedTables.WHO_DRINKING_WATER, new KnownTable(false, Set.of()),
        PublishedTables.LATE_SPRING_SOIL, new KnownTable(true, Set.of("critical")),
        PublishedTables.AUTUMN_RESIDUAL_SOIL, new KnownTable(true, Set.of("bulk-density")));
  }

  /** The table of a checked station file. */
  public static GuidanceTable table(TableSettings settings) {
    return settings instanceof Published published ? published(published) : own((Own) settings);
  }

  private static GuidanceTable published(Published chosen) {
    return switch (chosen.table()) {
      case PublishedTables.US_DRINKING_WATER -> PublishedTables.usDrinkingWater();
      case PublishedTables.WHO_DRINKING_WATER -> PublishedTables.whoDrinkingWater();
      case PublishedTables.LATE_SPRING_SOIL ->
          PublishedTables.lateSpringSoil(
              chosen
                  .critical()
                  .map(Critical::milligramsPerKilogram)
                  .orElse(PublishedTables.CRITICAL),
              chosen.critical().map(Critical::because));
      case PublishedTables.AUTUMN_RESIDUAL_SOIL ->
          PublishedTables.autumnResidualSoil(density(chosen.bulkDensity().orElseThrow()));
      default -> throw new IllegalArgumentException("a checked station names only known tables");
    };
  }

  private static Source.Quantity density(BulkDensity given) {
    double density = given.gramsPerCubicCentimetre();
    return Source.Quantity.of(
        "bulk density", "g/cm3", density, density * given.relativeUncertainty());
  }

  private static GuidanceTable own(Own given) {
    String unit = given.bands().get(0).below().map(Quantity::unit).orElseThrow();
    return new GuidanceTable(
        given.title(),
        given.source(),
        new Scope(
            given.region(),
            given.season(),
            given
                .layer()
                .map(layer -> new Depth(layer.topCentimetres(), layer.bottomCentimetres())),
            Optional.empty(),
            given.validUntil()),
        new Measurand(
            Analyte.named(given.analyte()).orElseThrow(),
            given.ofSoil() ? Measurand.DRY_SOIL : Measurand.WATER,
            unit,
            given.basis().flatMap(Basis::ofCode).orElse(Basis.AS_ION)),
        bands(given.bands()),
        Optional.empty(),
        Cautions.ADVICE);
  }

  private static List<Band> bands(List<TableSettings.Band> given) {
    List<Band> bands = new ArrayList<>();
    OptionalDouble from = OptionalDouble.empty();
    for (TableSettings.Band band : given) {
      OptionalDouble below =
          band.below()
              .map(limit -> OptionalDouble.of(limit.value()))
              .orElseGet(OptionalDouble::empty);
      bands.add(new Band(from, below, band.says(), band.caution()));
      from = below;
    }
    return bands;
  }
}
