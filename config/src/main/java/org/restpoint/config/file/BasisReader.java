package org.restpoint.config.file;

import java.util.List;
import java.util.Optional;

/** Reads what a concentration of an ion counts: there is no default where there is a choice. */
final class BasisReader {

  private final Vocabulary vocabulary;

  BasisReader(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
  }

  /**
   * Reads the basis.
   *
   * @param ion the ion; empty where it was refused
   * @param needed whether a choice must be made where there is one
   */
  Optional<String> read(Section keys, Optional<String> ion, boolean needed) {
    if (ion.isEmpty()) {
      return keys.find("basis").flatMap(value -> value.word(vocabulary.bases()));
    }
    List<String> bases = vocabulary.basesOf(ion.get());
    if (bases.size() > 1) {
      String choice = Wording.row(bases, "or") + ", as " + ion.get() + " is given either way";
      Optional<Entry> basis = needed ? keys.need("basis", choice) : keys.find("basis");
      return basis.flatMap(value -> value.word(bases));
    }
    if (bases.isEmpty()) {
      keys.find("basis")
          .ifPresent(value -> value.refuse("no basis, as " + ion.get() + " has none"));
      return Optional.empty();
    }
    return keys.find("basis")
        .flatMap(value -> value.word(bases, ", as " + ion.get() + " is given in no other way"));
  }

  /** The basis where it is a choice; what goes without saying is not said. */
  Optional<String> chosen(Optional<String> basis, String ion) {
    return vocabulary.basesOf(ion).size() > 1 ? basis : Optional.empty();
  }
}
