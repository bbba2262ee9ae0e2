package org.restpoint.config.file;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.restpoint.config.file.Standards.Draft;

/** Checks that a probe and its standards are given on one basis: nothing is converted silently. */
final class BasisAgreement {

  private final String probe;
  private final String analyte;
  private final List<String> bases;

  BasisAgreement(String probe, String analyte, Vocabulary vocabulary) {
    this.probe = probe;
    this.analyte = analyte;
    this.bases = vocabulary.basesOf(analyte);
  }

  /**
   * Tells standards without a basis that need one, with one that the analyte does not have, and
   * those on another basis than the probe.
   *
   * @param keys the probe
   * @param basis the probe's basis, where it was understood
   * @param used the probe's standards
   */
  void check(Section keys, Optional<String> basis, List<Draft> used) {
    Map<String, String> others = new LinkedHashMap<>();
    for (Draft standard : used) {
      Optional<String> given = standard.basis();
      if (given.isEmpty() && standard.basisAt().isEmpty() && bases.size() > 1) {
        tellMissing(standard.at());
      } else if (given.isPresent() && !bases.contains(given.get())) {
        standard.basisAt().ifPresent(this::tellForeign);
      } else if (given.isPresent() && basis.isPresent() && !given.equals(basis)) {
        others.put(nameOf(standard), given.get());
      }
    }
    if (!others.isEmpty()) {
      keys.find("basis").ifPresent(value -> tellDifferent(value, others));
    }
  }

  private void tellMissing(Entry standard) {
    String expected = Wording.row(bases, "or") + because();
    standard.problems().add(standard.key() + ".basis", standard.line(), expected, "nothing");
  }

  private void tellForeign(Entry basis) {
    basis.refuse((bases.isEmpty() ? "no basis" : Wording.row(bases, "or")) + because());
  }

  private static void tellDifferent(Entry basis, Map<String, String> others) {
    String other = others.values().iterator().next();
    String standards = Wording.row(List.copyOf(others.keySet()), "and");
    String are = others.size() == 1 ? "standard " + standards : "standards " + standards;
    basis.refuse(
        other + " like the " + are,
        basis.found(),
        "give the probe and its standards on one basis: nothing is converted silently");
  }

  private String because() {
    return ", as probe " + probe + " measures " + analyte + " with it";
  }

  private static String nameOf(Draft standard) {
    String key = standard.at().key();
    return key.substring(key.lastIndexOf('.') + 1);
  }
}
