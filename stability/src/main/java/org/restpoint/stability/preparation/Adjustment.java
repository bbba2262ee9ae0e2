package org.restpoint.stability.preparation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.uncertainty.Budget;
import org.restpoint.stability.uncertainty.MeasurementModel;
import org.restpoint.stability.uncertainty.Source;
import org.restpoint.stability.uncertainty.Source.Quantity;

/**
 * A sample read against standards, each prepared in its own way.
 *
 * <p>A line drawn through standards by their labels reads {@code c_read}. In the vessel there was
 * {@code c_read/f_std}, so the sample as it was taken holds {@code c = c_read·f_s/f_std}, with f =
 * V_total/V_s of either ({@link WaterPortion}). Where both were prepared in the same ratio the
 * factor is 1 and nothing is corrected.
 *
 * <p>Edge results, named by a {@link Reason}:
 *
 * <ul>
 *   <li>{@code adjustor-missing}: adjustor on one side only. The volume is corrected, the ionic
 *       strength differs all the same, so the two are not comparable;
 *   <li>{@code adjustor-mismatch}: the adjustor's shares of the volume differ by more than 1 % of
 *       the larger. The volume is corrected, the ionic strength is not.
 * </ul>
 *
 * <p>Volumes of sample and standards count as independent, even from one pipette. Method: law of
 * propagation ({@link Budget}). Reference: R. P. Buck, E. Lindner, Pure Appl. Chem. 66 (1994) 2527,
 * doi 10.1351/pac199466122527 (ionic-strength adjustment); the factor is a balance of mass.
 *
 * @param sample how the sample was prepared
 * @param standard how the standards were prepared
 */
public record Adjustment(WaterPortion sample, WaterPortion standard) {

  /**
   * Shares of adjustor that differ by less count as the same. By Davies' equation 1 % of the ionic
   * strength is 0.07 % of a monovalent ion's activity at 0.1 mol/L; our choice.
   */
  private static final double SAME_SHARE = 0.01;

  /** The factor f_s/f_std with its uncertainty. */
  public Budget factor() {
    return Budget.of("preparation factor", "1", volumes(), x -> factor(x, 0));
  }

  /**
   * The concentration of the sample as it was taken.
   *
   * @param read what the line through the standards' labels reads, in any unit of concentration
   */
  public Budget concentration(Quantity read) {
    List<Source> sources = new ArrayList<>(List.of(read));
    sources.addAll(volumes());
    MeasurementModel model = x -> x[0] * factor(x, 1);
    return Budget.of("concentration", read.unit(), sources, model);
  }

  /** What there is to say about the adjustor; empty where sample and standards agree. */
  public Optional<Reason> remark() {
    double inSample = sample.adjustorShare();
    double inStandard = standard.adjustorShare();
    if (Math.abs(inSample - inStandard) <= SAME_SHARE * Math.max(inSample, inStandard)) {
      return Optional.empty();
    }
    String figures =
        String.format(
            Locale.ROOT,
            "adjustor is %.2f %% of the sample's volume and %.2f %% of the standards'",
            100 * inSample,
            100 * inStandard);
    if (comparable()) {
      return Optional.of(
          new Reason(
              "adjustor-mismatch",
              figures
                  + String.format(
                      Locale.ROOT, "; the volumes are corrected by %.4f", factor().value()),
              "Add adjustor in the same ratio to sample and standards; the difference in ionic"
                  + " strength is not corrected."));
    }
    return Optional.of(
        new Reason(
            "adjustor-missing",
            figures + ": the ionic strengths differ and the readings are not comparable",
            "Read the "
                + (inSample > 0 ? "standards" : "sample")
                + " again with adjustor in the same ratio."));
  }

  /** Whether adjustor is in both or in neither. */
  public boolean comparable() {
    return sample.adjustorShare() > 0 == standard.adjustorShare() > 0;
  }

  private List<Quantity> volumes() {
    List<Quantity> quantities = new ArrayList<>();
    sample.volumes().forEach(volume -> quantities.add(volume.of("sample").quantity()));
    standard.volumes().forEach(volume -> quantities.add(volume.of("standard").quantity()));
    return quantities;
  }

  private double factor(double[] inputs, int first) {
    int middle = first + sample.volumes().size();
    return sample.factor(Arrays.copyOfRange(inputs, first, middle))
        / standard.factor(Arrays.copyOfRange(inputs, middle, inputs.length));
  }
}
