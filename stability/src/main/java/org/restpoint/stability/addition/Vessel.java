package org.restpoint.stability.addition;

import java.util.Optional;
import java.util.stream.Stream;
import org.restpoint.stability.preparation.Volume;
import org.restpoint.stability.uncertainty.Source.Quantity;

/**
 * What stands in the beaker before anything is added: V₀ = V + V_adj.
 *
 * @param liquid V, the sample or the standard as it was taken
 * @param adjustor V_adj, ionic-strength adjustor, where any is used; free of the analyte
 */
public record Vessel(Volume liquid, Optional<Volume> adjustor) {

  /** A liquid without adjustor. */
  public static Vessel of(Volume liquid) {
    return new Vessel(liquid, Optional.empty());
  }

  /** A liquid with adjustor. */
  public static Vessel of(Volume liquid, Volume adjustor) {
    return new Vessel(liquid, Optional.of(adjustor));
  }

  /** V, then V_adj where there is one. */
  Stream<Quantity> sources() {
    return Stream.concat(Stream.of(liquid), adjustor.stream()).map(Volume::quantity);
  }

  /** How many sources it has. */
  int size() {
    return adjustor.isPresent() ? 2 : 1;
  }

  /** V₀ of inputs that begin with its sources. */
  double total(double[] inputs) {
    return adjustor.isPresent() ? inputs[0] + inputs[1] : inputs[0];
  }

  /** V₀ in mL. */
  double totalMillilitres() {
    return liquid.millilitres() + adjustor.map(volume -> volume.millilitres()).orElse(0.0);
  }
}
