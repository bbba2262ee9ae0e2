package org.restpoint.stability.guidance;

import java.time.LocalDate;
import java.util.Optional;
import org.restpoint.stability.chemistry.Analyte;
import org.restpoint.stability.chemistry.Basis;

/** Numbers that tables are asked about. */
final class Numbers {

  static final LocalDate DAY = LocalDate.of(2026, 6, 9);

  private Numbers() {}

  static Measurand nitrate(String of, String unit, Basis basis) {
    return new Measurand(Analyte.named("nitrate").orElseThrow(), of, unit, basis);
  }

  static Found water(Relation relation, double milligramsPerLitreAsN, double uncertainty) {
    return new Found(
        nitrate("water", "mg/L", Basis.AS_N),
        milligramsPerLitreAsN,
        uncertainty,
        relation,
        Optional.empty(),
        DAY);
  }

  static Found soil(Relation relation, double milligramsPerKilogramAsN, double uncertainty) {
    return soil(relation, milligramsPerKilogramAsN, uncertainty, Optional.of(new Depth(0, 30)));
  }

  static Found soil(Relation relation, double value, double uncertainty, Optional<Depth> depth) {
    return new Found(
        nitrate("dry soil", "mg/kg", Basis.AS_N), value, uncertainty, relation, depth, DAY);
  }

  static Judgement.Applies applies(GuidanceTable table, Found found) {
    return (Judgement.Applies) Judge.of(table, found);
  }
}
