package org.restpoint.stability.guidance;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A published table: what numbers of one kind mean. Refuses, with an {@link
 * IllegalArgumentException}, bands that do not follow on each other from the lowest to the highest
 * number.
 *
 * @param title what it is about
 * @param source where it was published, and what of that was seen
 * @param scope for what it holds
 * @param measurand of what its limits are
 * @param bands upwards; none where it only reckons
 * @param formula what it reckons, if anything
 * @param caution what to mind with any number, and whose advice comes first
 */
public record GuidanceTable(
    String title,
    String source,
    Scope scope,
    Measurand measurand,
    List<Band> bands,
    Optional<Formula> formula,
    String caution) {

  public GuidanceTable {
    bands = List.copyOf(bands);
    OptionalDouble end = OptionalDouble.empty();
    for (int i = 0; i < bands.size(); i++) {
      Band band = bands.get(i);
      boolean last = i == bands.size() - 1;
      boolean rises =
          last
              || (band.below().isPresent()
                  && band.below().getAsDouble() > end.orElse(Double.NEGATIVE_INFINITY));
      if (!band.from().equals(end) || band.below().isEmpty() != last || !rises) {
        throw new IllegalArgumentException(
            "bands follow on each other upwards, the last without an end: " + bands);
      }
      end = band.below();
    }
  }
}
