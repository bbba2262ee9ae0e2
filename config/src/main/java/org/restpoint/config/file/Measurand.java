package org.restpoint.config.file;

import java.util.List;
import java.util.Optional;
import org.restpoint.config.station.Quantity;

/**
 * What an electrode measures, which decides whether its values are concentrations or pH.
 *
 * @param analyte the ion; empty where it was refused: then either is taken
 * @param vocabulary the analytes
 */
record Measurand(Optional<String> analyte, Vocabulary vocabulary) {

  private static final String PH_AS_WRITTEN = "pH";

  boolean isInPh() {
    return analyte.filter(vocabulary.inPh()::contains).isPresent();
  }

  boolean isConcentration() {
    return analyte.isPresent() && !isInPh();
  }

  /** Whether a value that stands for a point of the electrode's line is to be read as a pH. */
  boolean readsAsPh(Entry entry) {
    return isInPh() || (analyte.isEmpty() && Measure.PH.isUnitOf(entry));
  }

  /** The reason to give where the file takes the one for the other. */
  String because() {
    String is = isInPh() ? " is measured in pH" : " is not measured in pH";
    return analyte.map(ion -> ", as " + ion + is).orElse("");
  }

  /** A point of the electrode's line: a concentration, or a pH from 0 to 14. */
  Optional<Quantity> point(Entry entry) {
    return readsAsPh(entry)
        ? Allowed.PH.number(entry).map(ph -> new Quantity(ph, Quantity.PH))
        : Concentrations.read(entry).map(Concentrations::quantity);
  }

  /** What a point of the electrode's line looks like. */
  String aPoint() {
    return isInPh() ? Measure.PH.expected() : Measure.CONCENTRATION.expected();
  }

  /** The unit of results. */
  String usualUnit() {
    return isInPh() ? Quantity.PH : "mg/L";
  }

  /** A unit for results, where the file gives one. */
  Optional<String> unit(Entry entry) {
    boolean ph = entry.quietText().map(Measure::ucum).filter(Quantity.PH::equals).isPresent();
    if (isInPh()) {
      return ph ? Optional.of(Quantity.PH) : entry.word(List.of(PH_AS_WRITTEN), because());
    }
    if (!ph) {
      return Concentrations.unit(entry);
    }
    if (analyte.isEmpty()) {
      return Optional.of(Quantity.PH);
    }
    entry.refuse("one of " + String.join(", ", Concentrations.UNITS) + because());
    return Optional.empty();
  }
}
