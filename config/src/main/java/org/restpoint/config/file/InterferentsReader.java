package org.restpoint.config.file;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.restpoint.config.file.Measure.Measured;
import org.restpoint.config.station.Interferent;
import org.restpoint.config.station.Interferent.Level;

/** Reads the other ions that an electrode answers to as well. */
final class InterferentsReader {

  /** The keys that say how much of it there is. */
  static final List<String> KINDS = List.of("concentration", "at-most");

  /** The keys of an interferent whose concentration is known. */
  static final List<String> KNOWN_KEYS =
      List.of("selectivity", "concentration", "basis", "uncertainty");

  /** The keys of an interferent of which only a limit is known. */
  static final List<String> AT_MOST_KEYS = List.of("selectivity", "at-most", "basis");

  private static final int MOST = 10;
  private static final double USUAL_UNCERTAINTY = 0.5;
  private static final String A_MAPPING =
      "a mapping from each interfering ion to its selectivity and concentration or at-most";
  private static final String AN_INTERFERENT =
      "a mapping like { selectivity: 0.005, concentration: 40 mg/L }";

  private final Measurand measurand;
  private final Vocabulary vocabulary;

  InterferentsReader(Measurand measurand) {
    this.measurand = measurand;
    this.vocabulary = measurand.vocabulary();
  }

  List<Interferent> read(Entry entry) {
    List<Interferent> interferents = new ArrayList<>();
    entry
        .section(A_MAPPING)
        .ifPresent(
            keys -> {
              tellIons(keys);
              keys.children()
                  .forEach((ion, child) -> read(ion, child).ifPresent(interferents::add));
            });
    return interferents;
  }

  private void tellIons(Section keys) {
    List<String> own = measurand.analyte().stream().toList();
    List<String> others = vocabulary.analytes().stream().filter(ion -> !own.contains(ion)).toList();
    keys.only(others, own, "an ion does not interfere with itself: leave it out");
    int given = keys.children().size();
    if (given < 1 || given > MOST) {
      keys.self().refuse("1 to " + MOST + " interfering ions", given == 0 ? "none" : "" + given);
    }
  }

  private void tellSign(String ion, Entry entry) {
    measurand
        .analyte()
        .filter(analyte -> vocabulary.analytes().contains(ion))
        .filter(analyte -> !vocabulary.sameSign(ion, analyte))
        .ifPresent(
            analyte -> entry.refuse("an ion whose charge has the sign of that of " + analyte, ion));
  }

  private Optional<Interferent> read(String ion, Entry entry) {
    tellSign(ion, entry);
    Optional<Section> section = entry.section(AN_INTERFERENT);
    if (section.isEmpty()) {
      return Optional.empty();
    }
    Section keys = section.get();
    tellKeys(keys);
    Optional<String> kind = keys.kind(KINDS);
    Optional<Double> selectivity =
        keys.need("selectivity", PlainNumber.SELECTIVITY.expected())
            .flatMap(PlainNumber.SELECTIVITY::read);
    Optional<Measured> known = keys.find("concentration").flatMap(Concentrations::read);
    Optional<Measured> atMost = keys.find("at-most").flatMap(Concentrations::read);
    Optional<Measured> level = known.or(() -> atMost);
    boolean mass = level.filter(read -> !Concentrations.isAmount(read.unit())).isPresent();
    Optional<String> name = Optional.of(ion).filter(vocabulary.analytes()::contains);
    Optional<String> basis = new BasisReader(vocabulary).read(keys, name, mass);
    double uncertainty =
        keys.find("uncertainty")
            .flatMap(value -> Concentrations.uncertainty(value, known))
            .orElse(USUAL_UNCERTAINTY);
    Optional<Level> knownLevel =
        known.map(read -> new Level.Known(Concentrations.quantity(read), uncertainty));
    Optional<Level> limit = atMost.map(read -> new Level.AtMost(Concentrations.quantity(read)));
    Optional<String> chosen = new BasisReader(vocabulary).chosen(basis, ion);
    return kind.flatMap(any -> knownLevel.or(() -> limit))
        .flatMap(of -> selectivity.map(k -> new Interferent(ion, k, of, chosen)));
  }

  private static void tellKeys(Section keys) {
    if (keys.has("concentration")) {
      keys.only(keys.has("at-most") ? all() : KNOWN_KEYS);
    } else if (keys.has("at-most")) {
      keys.only(AT_MOST_KEYS, List.of("uncertainty"), "it goes only with concentration");
    } else {
      keys.only(all());
    }
  }

  private static List<String> all() {
    return Stream.concat(KNOWN_KEYS.stream(), Stream.of("at-most")).toList();
  }
}
