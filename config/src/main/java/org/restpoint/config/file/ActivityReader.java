package org.restpoint.config.file;

import java.util.List;
import java.util.Optional;
import org.restpoint.config.station.Activity;
import org.restpoint.config.station.Activity.Model;
import org.restpoint.config.station.Activity.OfStandards;
import org.restpoint.config.station.Quantity;

/** Reads the salt in samples and standards where no ionic-strength adjustor is used. */
final class ActivityReader {

  /** The keys of activity. */
  static final List<String> KEYS = List.of("model", "sample", "uncertainty", "standards");

  private static final List<String> MODELS = List.of("davies", "debye-hueckel");
  private static final String AN_ACTIVITY = "a mapping like { model: davies, sample: 0.02 mol/L }";
  private static final Allowed STRENGTH =
      Allowed.from(Measure.IONIC_STRENGTH, "0 mol/L", "2 mol/L");
  private static final Allowed UNCERTAINTY = Allowed.from(Measure.SHARE, "0 %", "100 %");
  private static final double USUAL_UNCERTAINTY = 0.2;

  private ActivityReader() {}

  static Optional<Activity> read(Entry entry, Measurand measurand) {
    if (measurand.isInPh()) {
      String remedy = "a pH standard is an activity already: leave it out";
      entry.refuse("no activity" + measurand.because(), entry.found(), remedy);
      return Optional.empty();
    }
    return entry.section(AN_ACTIVITY).flatMap(ActivityReader::read);
  }

  private static Optional<Activity> read(Section keys) {
    keys.only(KEYS);
    Optional<Model> model =
        keys.need("model", "one of " + String.join(", ", MODELS))
            .flatMap(value -> value.word(MODELS))
            .map(word -> word.equals("davies") ? Model.DAVIES : Model.DEBYE_HUECKEL);
    Optional<Quantity> sample =
        keys.need("sample", Measure.IONIC_STRENGTH.expected()).flatMap(ActivityReader::strength);
    double uncertainty =
        keys.find("uncertainty")
            .flatMap(UNCERTAINTY::number)
            .map(percent -> percent / 100)
            .orElse(USUAL_UNCERTAINTY);
    OfStandards standards =
        keys.find("standards").flatMap(ActivityReader::standards).orElseGet(OfStandards.Own::new);
    return model.flatMap(
        formula -> sample.map(i -> new Activity(formula, i, uncertainty, standards)));
  }

  private static Optional<OfStandards> standards(Entry entry) {
    String written = entry.quietText().orElse("");
    if (!written.isEmpty() && Character.isLetter(written.charAt(0))) {
      return entry
          .word(List.of("own"), ", or " + Measure.IONIC_STRENGTH.expected())
          .map(word -> new OfStandards.Own());
    }
    return strength(entry).map(OfStandards.Given::new);
  }

  private static Optional<Quantity> strength(Entry entry) {
    return STRENGTH.measured(entry).map(Concentrations::quantity);
  }
}
