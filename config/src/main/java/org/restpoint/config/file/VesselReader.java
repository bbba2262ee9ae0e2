package org.restpoint.config.file;

import java.util.List;
import java.util.Optional;
import org.restpoint.config.station.Recipe.Vessel;
import org.restpoint.config.station.Recipe.Volume;

/** Reads how a sample, an extract or a standard comes into the vessel in which it is read. */
final class VesselReader {

  /** The keys of a volume that is poured. */
  static final List<String> POURED_KEYS =
      List.of("volume", "within", "adjustor", "adjustor-within", "flask", "flask-within");

  /** The keys of what is read as it is, with adjustor already in it. */
  static final List<String> SHARE_KEYS = List.of("adjustor-share");

  /** The word for what is read as it is. */
  static final String AS_LABELLED = "as-labelled";

  /** What a poured volume looks like. */
  static final String POURED =
      "a mapping like { volume: 25 mL, within: 0.03 mL, adjustor: 0.5 mL, adjustor-within: 0.01 mL }";

  /** What the preparation of standards looks like. */
  static final String A_STANDARD = AS_LABELLED + ", or " + POURED;

  private static final Allowed SHARE = Allowed.above(Measure.SHARE, "0 %", "50 %");
  private static final Vessel ALONE = new Vessel.AsItIs(0);

  private VesselReader() {}

  /** Water, of which a volume is poured. */
  static Optional<Vessel> water(Entry entry) {
    Optional<Section> section = entry.section(POURED);
    section.ifPresent(
        keys ->
            keys.only(
                POURED_KEYS,
                SHARE_KEYS,
                "water as it was taken holds no adjustor: write adjustor"));
    return section.flatMap(VesselReader::poured);
  }

  /** An extract. */
  static Optional<Vessel> extract(Entry entry) {
    return entry.section(POURED).flatMap(VesselReader::either);
  }

  /**
   * The standards. Where the sample has adjustor, nobody may forget to say what the standards have.
   *
   * @param sample the sample's own, where it was understood
   */
  static Optional<Vessel> standard(Section recipe, Optional<Vessel> sample) {
    boolean must = sample.filter(VesselReader::hasAdjustor).isPresent();
    Optional<Entry> entry =
        must
            ? recipe.need("standard", A_STANDARD + ", as the sample has adjustor")
            : recipe.find("standard");
    if (entry.isEmpty()) {
      return must ? Optional.empty() : Optional.of(ALONE);
    }
    if (entry.get().isMapping()) {
      return entry.get().section(A_STANDARD).flatMap(VesselReader::either);
    }
    return entry.get().word(List.of(AS_LABELLED), ", or " + POURED).map(word -> ALONE);
  }

  private static boolean hasAdjustor(Vessel vessel) {
    return vessel instanceof Vessel.Poured poured
        ? poured.adjustor().isPresent()
        : ((Vessel.AsItIs) vessel).adjustorPercent() > 0;
  }

  private static Optional<Vessel> either(Section keys) {
    if (keys.has("adjustor-share") && !keys.has("volume")) {
      keys.only(SHARE_KEYS, POURED_KEYS, "it goes only with volume");
      return keys.find("adjustor-share").flatMap(SHARE::number).map(Vessel.AsItIs::new);
    }
    keys.only(
        POURED_KEYS, SHARE_KEYS, "it goes only without volume: write adjustor and its volume");
    return poured(keys);
  }

  private static Optional<Vessel> poured(Section keys) {
    Optional<Volume> volume =
        Toleranced.VOLUME.need(keys, "volume", "within").map(Toleranced.Read::volume);
    Optional<Volume> adjustor =
        Toleranced.VOLUME.find(keys, "adjustor", "adjustor-within").map(Toleranced.Read::volume);
    Optional<Volume> flask =
        Toleranced.VOLUME.find(keys, "flask", "flask-within").map(Toleranced.Read::volume);
    if (volume.isEmpty()) {
      return Optional.empty();
    }
    double inside = volume.get().millilitres() + adjustor.map(Volume::millilitres).orElse(0.0);
    if (flask.filter(to -> to.millilitres() < inside).isPresent()) {
      keys.find("flask")
          .ifPresent(at -> at.refuse("a flask that takes the volume and its adjustor"));
      return Optional.empty();
    }
    return Optional.of(new Vessel.Poured(volume.get(), adjustor, flask));
  }
}
