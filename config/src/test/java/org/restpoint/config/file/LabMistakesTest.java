package org.restpoint.config.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.config.file.StationFile.Outcome;

/** Mistakes about what is known of an electrode: several at once, and those that take many keys. */
class LabMistakesTest {

  @TempDir Path folder;

  @Test
  void everythingThatIsWrongIsToldAtOnceInTheFilesOrder() {
    String text =
        """
        station: lab
        broker: embedded
        standards:
          b4: { buffer: phtalate, uncertainty: 1 % }
          b7:
            pH:
              20 Cel: 7.02
              25: 7.00
              20.0 Cel: 7.1
            basis: as-ion
          n: { concentration: 10 mg/L, basis: as-N }
        probes:
          ph:
            analyte: hydrogen
            unit: mg/L
            link: { simulated: { solution: 1 umol/L } }
            temperature: { from: reading }
            compensation:
              isopotential: 7
              uncertainty: 30 %
            activity: { model: davies, sample: 0.1 mol/L }
            interferents:
              hydrogen: { selectivity: 1, at-most: 1 mol/L }
              sodum: { selectivity: 1e-11 }
            calibrate:
              standards: [b4, b7, n]
              low-end: curved
              range: 12..2 pH
              temperature-within: 2
              stock-uncertainty: 30 %
          no3:
            analyte: nitrate
            basis: as-N
            unit: pH
            link: { simulated: { solution: 10 mg/L } }
            temperature: { from: reading }
            compensation: { coefficient: 1 mV }
            activity: { sample: 0.1 }
            interferents:
              nitrite: { at-most: 1 mg/L, selectivity: -1 }
              sodium: { at-most: 1 mg/L, selectivity: 1 }
            calibrate: { standards: [n, b7], range: 0..10 mg/L }
        """;
    String ions = "one of ammonium, chloride, fluoride, nitrate, nitrite, sodium";
    String units = "mg/L, ug/L, mmol/L, umol/L or mol/L";

    assertThat(new Fixture(folder).problems(text))
        .containsExactly(
            "standards.b4.buffer (line 4): expected one of borate, phosphate, phthalate;"
                + " found phtalate; did you mean phthalate?",
            "standards.b4.uncertainty (line 4): expected an uncertainty in pH, e.g. 0.01 pH;"
                + " found 1 %",
            "standards.b7.pH.25 (line 8): expected a temperature in Cel, e.g. 22.5 Cel;"
                + " found 25 (no unit)",
            "standards.b7.pH.20.0 Cel (line 9): expected each temperature once;"
                + " found 20.0 Cel after 20 Cel",
            "standards.b7.basis (line 10): expected one of concentration, buffer, pH, uncertainty,"
                + " lot, expires; found basis; a pH is on no basis: leave it out",
            "probes.ph.unit (line 15): expected pH, as hydrogen is measured in pH; found mg/L",
            "probes.ph.compensation.isopotential (line 19): expected a pH value in pH,"
                + " e.g. 7.00 pH; found 7 (no unit)",
            "probes.ph.compensation.uncertainty (line 20): expected an uncertainty in pH,"
                + " e.g. 0.01 pH; found 30 %",
            "probes.ph.activity (line 21): expected no activity, as hydrogen is measured in pH;"
                + " found a mapping; a pH standard is an activity already: leave it out",
            "probes.ph.interferents.hydrogen (line 23): expected "
                + ions
                + "; found hydrogen; an ion does not interfere with itself: leave it out",
            "probes.ph.interferents.sodum (line 24): expected "
                + ions
                + "; found sodum; did you mean sodium?",
            "probes.ph.interferents.sodum (line 24): expected exactly one of concentration,"
                + " at-most; found none of them",
            "probes.ph.calibrate.standards[2] (line 26): expected a standard with buffer or pH,"
                + " as hydrogen is measured in pH; found n with concentration",
            "probes.ph.calibrate.low-end (line 27): expected straight,"
                + " as hydrogen is measured in pH; found curved",
            "probes.ph.calibrate.range (line 28): expected a range within 0..14 pH,"
                + " the lower limit first; found 12..2 pH",
            "probes.ph.calibrate.temperature-within (line 29): expected a temperature difference"
                + " in K, e.g. 1 K; found 2 (no unit)",
            "probes.ph.calibrate.stock-uncertainty (line 30): expected a share from 0 % to 20 %;"
                + " found 30 %",
            "probes.no3.unit (line 34): expected one of mg/L, ug/L, mmol/L, umol/L, mol/L,"
                + " as nitrate is not measured in pH; found pH",
            "probes.no3.compensation.coefficient (line 37): expected a temperature coefficient"
                + " in mV/K, e.g. -0.9 mV/K; found 1 mV; did you mean 1 mV/K?",
            "probes.no3.compensation.at (line 37): expected what it was measured in:"
                + " a concentration in "
                + units
                + ", e.g. 20 mg/L; found nothing",
            "probes.no3.activity.model (line 38): expected one of davies, debye-hueckel;"
                + " found nothing",
            "probes.no3.activity.sample (line 38): expected an ionic strength in mol/L or mmol/L,"
                + " e.g. 0.02 mol/L; found 0.1 (no unit)",
            "probes.no3.interferents.nitrite.selectivity (line 40): expected a number above 0,"
                + " at most 1000000, e.g. 0.005; found -1",
            "probes.no3.interferents.nitrite.basis (line 40): expected as-N or as-ion,"
                + " as nitrite is given either way; found nothing",
            "probes.no3.interferents.sodium (line 41): expected an ion whose charge has the sign of"
                + " that of nitrate; found sodium",
            "probes.no3.calibrate.standards[1] (line 42): expected a standard with concentration,"
                + " as nitrate is not measured in pH; found b7 with pH",
            "probes.no3.calibrate.range (line 42): expected a range above 0 mg/L,"
                + " at most 1000000 mg/L, the lower limit first; found 0..10 mg/L");
  }

  @Test
  void anAnalyteThatIsNotUnderstoodLeavesOpenWhetherItIsMeasuredInPh() {
    String text =
        Fixture.changed("lab.yaml", "analyte: hydrogen", "analyte: hidrogen")
            .replace("2..12 pH", "2..12pH");

    assertThat(new Fixture(folder).problems(text))
        .containsExactly(
            "probes.ph.analyte (line 33): expected one of ammonium, chloride, fluoride, hydrogen,"
                + " nitrate, nitrite, sodium; found hidrogen; did you mean hydrogen?");
  }

  @Test
  void whatIsNoNumberIsNoPh() {
    assertThat(new Fixture(folder).problems(Fixture.changed("lab.yaml", "pH: 10", "pH: .nan")))
        .containsExactly(
            "standards.b10.pH (line 14): expected a number from 0 to 14, or numbers by temperature"
                + " like { 20 Cel: 7.02, 25 Cel: 7.00 }; found .nan");
  }

  @Test
  void whereNoBufferIsKnownAStandardSaysItsPh() throws IOException {
    Vocabulary noBuffers =
        new Vocabulary(
            Fixture.VOCABULARY.basesByAnalyte(),
            Set.of("hydrogen"),
            Set.of(),
            Fixture.VOCABULARY.anions());

    assertThat(problems(Fixture.example("lab.yaml"), noBuffers))
        .containsExactly(
            "standards.b4.buffer (line 11): expected concentration or pH,"
                + " as no buffer is known by name; found phthalate",
            "standards.b9.buffer (line 13): expected concentration or pH,"
                + " as no buffer is known by name; found borate");
  }

  @Test
  void aVocabularyWithoutPhTakesHydrogenAsAConcentration() throws IOException {
    String text =
        Fixture.example("smallest.yaml")
            .replace("analyte: nitrate\n    basis: as-N", "analyte: hydrogen\n    unit: pH")
            .replace(", basis: as-N", "");

    assertThat(problems(text, new Vocabulary(Map.of("hydrogen", Set.of()))))
        .containsExactly(
            "probes.no3-a.unit (line 8): expected one of mg/L, ug/L, mmol/L, umol/L, mol/L,"
                + " as hydrogen is not measured in pH; found pH");
  }

  @Test
  void tenInterferentsAreTakenAndElevenAreTold() throws IOException {
    assertThat(withInterferents(10)).isEmpty();
    assertThat(withInterferents(11))
        .containsExactly(
            "probes.no3-a.interferents (line 12): expected 1 to 10 interfering ions; found 11");
  }

  private List<String> withInterferents(int count) throws IOException {
    Map<String, Set<String>> ions = new TreeMap<>(Fixture.VOCABULARY.basesByAnalyte());
    StringBuilder text = new StringBuilder(Fixture.example("smallest.yaml"));
    text.append("    interferents:\n");
    IntStream.range(0, count)
        .mapToObj(number -> "ion-" + number)
        .forEach(
            ion -> {
              ions.put(ion, Set.of());
              text.append("      " + ion + ": { selectivity: 1, at-most: 1 mmol/L }\n");
            });
    Set<String> anions = new TreeSet<>(ions.keySet());
    return problems(text.toString(), new Vocabulary(ions, Set.of(), Set.of(), anions));
  }

  private List<String> problems(String text, Vocabulary vocabulary) throws IOException {
    Path file = Files.writeString(folder.resolve("station.yaml"), text);
    return StationFile.read(file, vocabulary) instanceof Outcome.Refused refused
        ? refused.problems().stream().map(Problem::text).toList()
        : List.of();
  }

  @Test
  void whatIsMeasuredInPhMustBeAnAnalyte() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Vocabulary(Map.of(), Set.of("hydrogen"), Set.of(), Set.of()))
        .withMessage("measured in pH, but no analyte: [hydrogen]");
  }
}
