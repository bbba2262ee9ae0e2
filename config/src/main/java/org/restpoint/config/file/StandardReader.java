package org.restpoint.config.file;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import java.util.NavigableMap;
import java.util.Optional;
import org.restpoint.config.file.Measure.Measured;
import org.restpoint.config.file.Standards.Draft;
import org.restpoint.config.station.StandardSolution;
import org.restpoint.config.station.StandardSolution.Value;

/** Reads one standard: a concentration, or a pH by number or by the buffer's name. */
final class StandardReader {

  /** The keys that say what the label says. */
  static final List<String> KINDS = List.of("concentration", "buffer", "pH");

  /** The keys of a standard. */
  static final List<String> KEYS =
      List.of("concentration", "basis", "buffer", "pH", "uncertainty", "lot", "expires");

  /** What makers commonly state for a volumetric standard. */
  private static final double USUAL_UNCERTAINTY = 0.01;

  /** Common practice for a technical buffer of a known recipe. */
  private static final double USUAL_BUFFER_UNCERTAINTY = 0.01;

  /** What makers commonly state for a solution by its pH. */
  private static final double USUAL_PH_UNCERTAINTY = 0.02;

  private static final Allowed PH_UNCERTAINTY =
      Allowed.from(Measure.PH_UNCERTAINTY, "0 pH", "1 pH");
  private static final String A_STANDARD =
      "a mapping with concentration, buffer or pH, e.g. { concentration: 20 mg/L }";
  private static final String A_DATE = "a date like 2027-03-01";

  private final String name;
  private final Vocabulary vocabulary;

  StandardReader(String name, Vocabulary vocabulary) {
    this.name = name;
    this.vocabulary = vocabulary;
  }

  Draft read(Entry entry) {
    Optional<Section> section = entry.section(A_STANDARD);
    if (section.isEmpty()) {
      return new Draft(
          entry, Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
    }
    Section keys = section.get();
    tellKeys(keys);
    Optional<String> kind = keys.kind(KINDS);
    Optional<Measured> concentration = keys.find("concentration").flatMap(Concentrations::read);
    Optional<String> basis =
        keys.find("basis").filter(any -> !isPh(keys)).flatMap(v -> v.word(vocabulary.bases()));
    Optional<Value> label =
        switch (kind.orElse("")) {
          case "concentration" -> ofConcentration(keys, concentration, basis);
          case "buffer" -> ofBuffer(keys);
          case "pH" -> ofPh(keys);
          default -> Optional.empty();
        };
    Optional<String> lot = keys.find("lot").flatMap(value -> value.freeText("the lot's mark"));
    Optional<LocalDate> expires = keys.find("expires").flatMap(StandardReader::date);
    Optional<StandardSolution> solution =
        label.map(says -> new StandardSolution(name, says, lot, expires));
    return new Draft(entry, kind, keys.find("basis"), basis, solution);
  }

  /** Whether it is a pH and nothing else. */
  private static boolean isPh(Section keys) {
    return !keys.has("concentration") && (keys.has("buffer") || keys.has("pH"));
  }

  private static void tellKeys(Section keys) {
    if (!isPh(keys)) {
      keys.only(KEYS);
      return;
    }
    List<String> known = KEYS.stream().filter(key -> !key.equals("basis")).toList();
    keys.only(known, List.of("basis"), "a pH is on no basis: leave it out");
  }

  private static Optional<Value> ofConcentration(
      Section keys, Optional<Measured> concentration, Optional<String> basis) {
    double uncertainty =
        keys.find("uncertainty")
            .flatMap(value -> Concentrations.uncertainty(value, concentration))
            .orElse(USUAL_UNCERTAINTY);
    return concentration.map(
        read -> new Value.OfConcentration(Concentrations.quantity(read), basis, uncertainty));
  }

  private Optional<Value> ofBuffer(Section keys) {
    Optional<String> buffer = keys.find("buffer").flatMap(this::buffer);
    double uncertainty = phUncertainty(keys, USUAL_BUFFER_UNCERTAINTY);
    return buffer.map(word -> new Value.OfBuffer(word, uncertainty));
  }

  private Optional<String> buffer(Entry entry) {
    if (vocabulary.buffers().isEmpty()) {
      entry.refuse("concentration or pH, as no buffer is known by name");
      return Optional.empty();
    }
    return entry.word(List.copyOf(vocabulary.buffers()));
  }

  private static Optional<Value> ofPh(Section keys) {
    Optional<Entry> ph = keys.find("pH");
    if (ph.filter(Entry::isMapping).isPresent()) {
      Optional<NavigableMap<Double, Double>> table = ph.flatMap(PhTable::table);
      double uncertainty = phUncertainty(keys, USUAL_PH_UNCERTAINTY);
      return table.map(rows -> new Value.OfPhTable(rows, uncertainty));
    }
    Optional<Double> one = ph.flatMap(PhTable::one);
    double uncertainty = phUncertainty(keys, USUAL_PH_UNCERTAINTY);
    return one.map(number -> new Value.OfPh(number, uncertainty));
  }

  private static double phUncertainty(Section keys, double usual) {
    return keys.find("uncertainty").flatMap(PH_UNCERTAINTY::number).orElse(usual);
  }

  /** A day. */
  static Optional<LocalDate> date(Entry entry) {
    Optional<String> text = entry.text(A_DATE);
    try {
      return text.map(LocalDate::parse);
    } catch (DateTimeException e) {
      entry.refuse(A_DATE);
      return Optional.empty();
    }
  }
}
