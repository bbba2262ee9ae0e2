package org.restpoint.config.file;

import java.util.Optional;
import org.restpoint.config.station.Quantity;
import org.restpoint.config.station.ReportableRange;

/** Reads between which values an electrode's results are given as numbers. */
final class RangeReader {

  private static final String OF_CONCENTRATIONS =
      "a range in " + Measure.CONCENTRATION.units() + ", e.g. 0.5..200 mg/L";
  private static final String OF_PH = "a range in pH, e.g. 2..12 pH";
  private static final double HIGHEST_PH = 14;

  private RangeReader() {}

  static Optional<ReportableRange> read(Entry entry, Measurand measurand) {
    boolean ph = measurand.readsAsPh(entry);
    String expected = ph ? OF_PH : OF_CONCENTRATIONS;
    Optional<RangeText> text = RangeText.read(entry, expected);
    if (text.isEmpty()) {
      return Optional.empty();
    }
    RangeText range = text.get();
    boolean foreign =
        ph ? !range.unit().equals(Quantity.PH) : !Concentrations.UNITS.contains(range.unit());
    if (foreign) {
      boolean mistaken = ph || range.unit().equals(Quantity.PH);
      entry.refuse(expected + (mistaken ? measurand.because() : ""));
      return Optional.empty();
    }
    boolean within =
        ph
            ? range.high() <= HIGHEST_PH
            : range.low() > 0 && range.high() <= Concentrations.most(range.unit());
    if (within && range.low() < range.high()) {
      Quantity low = new Quantity(range.low(), range.unit());
      return Optional.of(new ReportableRange(low, new Quantity(range.high(), range.unit())));
    }
    String bounds = ph ? "within 0..14 pH" : Concentrations.bounds(range.unit());
    entry.refuse("a range " + bounds + ", the lower limit first");
    return Optional.empty();
  }
}
