package org.restpoint.stability.guidance;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.restpoint.stability.calibration.Reason;

/** Why a table has nothing to say of a number. */
final class Applicability {

  private Applicability() {}

  /** All that keeps the table from the number; nothing where it applies. */
  static List<Reason> lacks(GuidanceTable table, Found found) {
    List<Reason> lacks = new ArrayList<>();
    measurand(table.measurand(), found.measurand()).ifPresent(lacks::add);
    depth(table, found).ifPresent(lacks::add);
    table
        .scope()
        .validUntil()
        .filter(last -> found.day().isAfter(last))
        .map(
            last ->
                new Reason(
                    "table-outdated",
                    "it was valid until " + last + ", and the number is of " + found.day(),
                    "Look for the edition that holds now and write that into the station file."))
        .ifPresent(lacks::add);
    return lacks;
  }

  private static Optional<Reason> measurand(Measurand wanted, Measurand given) {
    if (!wanted.analyte().equals(given.analyte())) {
      return Optional.of(
          new Reason(
              "other-analyte",
              "it is of " + wanted.analyte().name() + ", the number of " + given.analyte().name(),
              "Choose a table of that ion."));
    }
    if (!wanted.of().equals(given.of())) {
      return Optional.of(
          new Reason(
              "other-matter",
              "it is of " + wanted.of() + ", the number of " + given.of(),
              wanted.of().equals(Measurand.DRY_SOIL) && given.of().contains("soil")
                  ? "Give moisturePercent of the sample, so that the number is of dry soil."
                  : "Name the recipe by which the sample was prepared, so that the number is of "
                      + wanted.of()
                      + "."));
    }
    return given.factorTo(wanted).isPresent()
        ? Optional.empty()
        : Optional.of(
            new Reason(
                "other-unit",
                "it is in " + wanted.units() + ", the number in " + given.units(),
                "Choose a table whose limits are in such a unit."));
  }

  private static Optional<Reason> depth(GuidanceTable table, Found found) {
    Optional<Depth> wanted = table.scope().depth();
    boolean onArea = table.formula().filter(Formula.OnArea.class::isInstance).isPresent();
    if (found.depth().isEmpty()) {
      return wanted.isPresent() || onArea
          ? Optional.of(
              new Reason(
                  "depth-unknown",
                  "the sample's record does not say from where in the soil it was taken"
                      + wanted.map(layer -> ", and it is of " + layer.text()).orElse(""),
                  "Give depthTopCentimetres and depthBottomCentimetres of the sample."))
          : Optional.empty();
    }
    Depth given = found.depth().get();
    return wanted
        .filter(layer -> !layer.isLike(given))
        .map(
            layer ->
                new Reason(
                    "other-depth",
                    "it is of soil from " + layer.text() + ", the sample from " + given.text(),
                    "Take a sample of that layer, or choose a table of the sample's."));
  }
}
