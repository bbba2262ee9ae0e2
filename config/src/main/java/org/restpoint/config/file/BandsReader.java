package org.restpoint.config.file;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.restpoint.config.file.Measure.Measured;
import org.restpoint.config.station.Quantity;
import org.restpoint.config.station.TableSettings.Band;

/** Reads the bands of a guidance table, from the lowest numbers upwards. */
final class BandsReader {

  /** The keys of a band. */
  static final List<String> KEYS = List.of("below", "says", "caution");

  private static final String A_BAND = "a mapping with below and says, the last one without below";

  /** A soil is no more than all of one thing. */
  private static final Allowed CONTENT =
      Allowed.above(Measure.CONTENT_OF_SOIL, "0 mg/kg", "1000000 mg/kg");

  private final Optional<Boolean> soil;
  private final Measurand measurand;
  private Optional<Measured> former = Optional.empty();

  /**
   * A reader for one table.
   *
   * @param soil whether its numbers are of soil; empty where that was refused
   * @param measurand what they are a number of
   */
  BandsReader(Optional<Boolean> soil, Measurand measurand) {
    this.soil = soil;
    this.measurand = measurand;
  }

  /** The bands; none where one of them was refused. */
  List<Band> read(Entry entry) {
    List<Entry> items = entry.items(OwnTableReader.A_LIST);
    if (items.size() == 1) {
      entry.refuse(OwnTableReader.A_LIST, "a single band");
    }
    List<Band> bands = new ArrayList<>();
    for (int i = 0; i < items.size(); i++) {
      boolean last = i == items.size() - 1;
      items.get(i).section(A_BAND).flatMap(keys -> band(keys, last)).ifPresent(bands::add);
    }
    return bands.size() == items.size() && bands.size() > 1 ? bands : List.of();
  }

  private Optional<Band> band(Section keys, boolean last) {
    keys.only(KEYS);
    Optional<String> says =
        keys.need("says", "what such a number means")
            .flatMap(entry -> OwnTableReader.text(entry, "what such a number means"));
    Optional<String> caution =
        keys.find("caution").flatMap(entry -> OwnTableReader.text(entry, "what to mind"));
    if (last) {
      keys.find("below")
          .ifPresent(
              entry ->
                  entry.refuse(
                      "no below in the last band, which holds all that is above",
                      entry.found(),
                      "add a band { says: … } after it"));
      return keys.has("below")
          ? Optional.empty()
          : says.map(text -> new Band(Optional.empty(), text, caution));
    }
    Optional<Quantity> below =
        keys.need("below", "the band's upper limit: " + measure().expected()).flatMap(this::limit);
    return below.flatMap(limit -> says.map(text -> new Band(Optional.of(limit), text, caution)));
  }

  private Measure measure() {
    if (soil.orElse(false)) {
      return Measure.CONTENT_OF_SOIL;
    }
    return measurand.isInPh() ? Measure.PH : Measure.CONCENTRATION;
  }

  /** A limit above the former one and in its unit. */
  private Optional<Quantity> limit(Entry entry) {
    Optional<Measured> read = measured(entry);
    if (read.isEmpty()) {
      return Optional.empty();
    }
    Measured limit = read.get();
    if (former.isPresent() && !former.get().unit().equals(limit.unit())) {
      entry.refuse("a limit in " + former.get().unit() + " like the one before");
      return Optional.empty();
    }
    BigDecimal before =
        former.map(Measured::number).orElse(limit.number().subtract(BigDecimal.ONE));
    if (limit.number().compareTo(before) <= 0) {
      entry.refuse("a limit above the one before, " + before.toPlainString() + " " + limit.unit());
      return Optional.empty();
    }
    former = read;
    return Optional.of(Concentrations.quantity(limit));
  }

  private Optional<Measured> measured(Entry entry) {
    if (soil.orElse(false)) {
      return CONTENT.measured(entry);
    }
    return measurand.isInPh() ? Allowed.PH.measured(entry) : Concentrations.read(entry);
  }
}
