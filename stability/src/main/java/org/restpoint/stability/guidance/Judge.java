package org.restpoint.stability.guidance;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.preparation.SoilBasis;
import org.restpoint.stability.preparation.SoilLayer;
import org.restpoint.stability.preparation.SoilProfile;
import org.restpoint.stability.uncertainty.Source.Quantity;

/**
 * Judges a number by a published table.
 *
 * <p>A number x with its expanded uncertainty U (k = 2) may be anything from x − U to x + U; one
 * told by {@code <} anything below x + U, one told by {@code >} anything from x − U upwards, since
 * a limit is itself known within U only. Every band that this reaches is named, so a number whose U
 * reaches over a limit is in no band but too near that limit to tell, and {@code > 8} cannot be
 * said to be below 10. A limit itself belongs to the band above it.
 *
 * <p>Edge results: a number of another ion, of another thing, from another depth or of a time when
 * the table no longer held is not judged, and all of that is named. Another unit and basis are
 * reckoned over by molar masses. The guard bands of conformity assessment (JCGM 106:2012, 8.3) come
 * to the same: acceptance and rejection both leave out what lies within U of a limit.
 */
public final class Judge {

  private static final double COVERAGE = 2;

  private Judge() {}

  /** What the table says of the number. */
  public static Judgement of(GuidanceTable table, Found found) {
    List<Reason> lacks = Applicability.lacks(table, found);
    OptionalDouble factor = found.measurand().factorTo(table.measurand());
    if (!lacks.isEmpty() || factor.isEmpty()) {
      return new Judgement.DoesNotApply(lacks);
    }
    Found number = found.in(table.measurand(), factor.getAsDouble());
    List<Band> bands = table.bands().stream().filter(band -> band.isReachedBy(number)).toList();
    String meaning = bands.isEmpty() ? "" : GuidanceWords.of(number, bands);
    if (table.formula().isEmpty()) {
      return new Judgement.Applies(bands, Optional.empty(), meaning);
    }
    if (table.formula().get() instanceof Formula.Shortfall lack) {
      return new Judgement.Applies(
          bands, rate(lack, number), meaning + " " + GuidanceWords.rate(lack, number));
    }
    return new Judgement.Applies(
        bands,
        Optional.empty(),
        (meaning + " " + amount((Formula.OnArea) table.formula().get(), number)).strip());
  }

  private static Optional<Rate> rate(Formula.Shortfall lack, Found number) {
    boolean enough =
        number.relation() == Relation.ABOVE
            ? number.lowest() >= lack.critical()
            : number.relation() == Relation.EQUAL && number.value() >= lack.critical();
    if (enough) {
      return Optional.of(new Rate(0, OptionalDouble.empty(), GuidanceWords.reckoned(lack, number)));
    }
    return number.relation() == Relation.EQUAL
        ? Optional.of(
            new Rate(
                (lack.critical() - number.value()) * lack.factor(),
                OptionalDouble.of(number.expandedUncertainty() * lack.factor()),
                GuidanceWords.reckoned(lack, number)))
        : Optional.empty();
  }

  private static String amount(Formula.OnArea area, Found number) {
    Depth depth = number.depth().orElseThrow();
    SoilProfile profile =
        new SoilProfile(
            List.of(
                new SoilLayer(
                    depth.text(),
                    Quantity.of(
                        "content",
                        Measurand.MILLIGRAMS_PER_KILOGRAM,
                        number.value(),
                        number.expandedUncertainty() / COVERAGE),
                    SoilBasis.OVEN_DRY,
                    Quantity.exactly("thickness", "cm", depth.thicknessCentimetres()),
                    area.bulkDensity())));
    return GuidanceWords.amount(
        number,
        depth,
        profile.kilogramsPerHectare(),
        profile.poundsPerAcre(),
        area.bulkDensity().value());
  }
}
