package org.restpoint.acquisition.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.restpoint.acquisition.command.Said.run;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.restpoint.acquisition.instruction.InstructionReader;

/** A person's mistakes at the terminal: the very words on standard error, and the exit status. */
class CommandMistakesTest {

  private static final String WORDS = String.join(", ", InstructionReader.WORDS);

  private static final String SEVEN_MISTAKES =
      """
      station: willow-bench
      broker: embedded
      standards:
        low:  { concentration: 5, basis: as-N }
        high: { concentration: 100 mg/L, basis: as-ion }
      probes:
        no3-a:
          analyte: nitrate
          basis: as-N
          link: { serial: { port: /dev/ttyUSB0, line: 'E=([-+.\\d]+) mV' } }
          temperature: { fixed: 22.0 Cel }
          settle: { wihtin: 0.1 mV, not-before: 20 mV }
          calibrate: { standards: [low, high] }
        no3-b:
          analyte: nitrate
          basis: as-N
          link: { serial: { port: /dev/ttyUSB0, decimal: dot, line: '(?<millivolts>[-+.\\d]+) mV' } }
          temperature: { fixed: 22.0 Cel }
          calibrate: { standards: [hihg] }
      """;

  @TempDir private Path folder;

  private Path station = Path.of("");

  @BeforeEach
  void writeTheStation() throws IOException {
    station = write("station.yaml", WillowBench.FILE);
  }

  private Path write(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text);
  }

  private static void assertSaid(Said said, int exitStatus, String err) {
    said.isRefusal(exitStatus, err);
  }

  @Test
  void aStationFileIsRefusedWithAllItsProblemsAtOnce() throws IOException {
    Path bad = write("bad.yaml", SEVEN_MISTAKES);
    String problems =
        """
        %s is refused, 7 problems:
          standards.low.concentration (line 4): expected a concentration in mg/L, ug/L, mmol/L, umol/L or mol/L, e.g. 20 mg/L; found 5 (no unit)
          probes.no3-a.basis (line 9): expected as-ion like the standard high; found as-N; give the probe and its standards on one basis: nothing is converted silently
          probes.no3-a.link.serial.line (line 10): expected a pattern with the named group millivolts, e.g. (?<millivolts>[-+.\\d]+); found a pattern without named groups
          probes.no3-a.settle.wihtin (line 12): expected one of rule, within, learn, not-before, give-up-after; found wihtin; did you mean within?
          probes.no3-a.settle.not-before (line 12): expected a time in ms, s, min, h or d, e.g. 10 min; found 20 mV
          probes.no3-b.link.serial.decimal (line 17): expected one of point, comma; found dot
          probes.no3-b.calibrate.standards[0] (line 19): expected a standard defined under standards (low, high); found hihg; did you mean high?"""
            .formatted(bad);
    assertSaid(run("check", bad), 3, problems);
    assertSaid(run("run", bad), 3, problems);
    assertSaid(run("tell", bad, "no3-a", "measure"), 3, problems);
    assertSaid(run("records", bad), 3, problems);
    assertSaid(run("replay", bad, "any.csv"), 3, problems);
  }

  @Test
  void aStationFileThatIsNotThere() {
    Path absent = folder.resolve("absent.yaml");
    assertSaid(
        run("run", absent),
        3,
        "%s is refused, 1 problem:\n  absent.yaml: expected a station file that can be read; found no such file; check the path: %s"
            .formatted(absent, absent));
  }

  @Test
  void anUnknownProbe() {
    assertSaid(
        run("tell", station, "no3-x", "measure"),
        2,
        "no3-x is not a probe of station willow-bench: no3-a");
  }

  @Test
  void anUnknownInstruction() {
    assertSaid(
        run("tell", station, "no3-a", "mesure"),
        2,
        "do: expected an instruction (%s); found mesure".formatted(WORDS));
  }

  @Test
  void aListOfCupsThatCannotBeUsed() throws IOException {
    Path list =
        write("cups.csv", "cup,standard,sample,rinse\n1,low,,\n2,low,S-1,\n2,,S-2,\n3,,,perhaps\n");
    assertSaid(
        run("batch", station, "no3-a", list),
        4,
        """
        %s is refused and nothing of it is sent:
          line 3: expected exactly one of standard, sample, check, blank, duplicate, spike, rinse; found standard and sample
          line 5: rinse: expected yes or nothing; found perhaps
          line 5: expected exactly one of standard, sample, check, blank, duplicate, spike, rinse; found none"""
            .formatted(list));
    assertSaid(
        run("batch", station, "no3-a", write("twice.csv", "cup;sample\n2;S-1\n2;S-2\n")),
        4,
        """
        %s is refused and nothing of it is sent:
          cup 2 (at 2): expected a name of its own; found it again, first at 1"""
            .formatted(folder.resolve("twice.csv")));
    assertSaid(
        run("batch", station, "no3-a", folder.resolve("absent.csv")),
        4,
        "%s is refused and nothing of it is sent:\n  it is not there"
            .formatted(folder.resolve("absent.csv")));
  }

  @Test
  void anInstructionWithoutWhatItNeeds() {
    assertSaid(
        run("tell", station, "no3-a", "calibrate"),
        2,
        "standard is missing: expected the name of the standard the electrode is in");
    assertSaid(
        run("tell", station, "no3-a", "measure", "standard=low"),
        2,
        "measure takes do, id, private, probe, recipe, sample, time; found standard");
    assertSaid(
        run("tell", station, "no3-a", "soak", "minutes=none"),
        2,
        "minutes: expected a whole number from 1 to 10080; found \"none\"");
  }

  @Test
  void anInstructionToAStationThatHasNeverRun() {
    assertSaid(
        run("tell", station, "no3-a", "measure"),
        4,
        "station willow-bench has not been run yet; start it with: restpoint run " + station);
  }

  @Test
  void recordsWithoutAJournal() {
    assertSaid(
        run("records", station),
        4,
        "there is no journal %s; it is made when the service first runs"
            .formatted(folder.resolve("willow-bench.db")));
  }

  @Test
  void recordsOfAFileThatIsNotAJournal() throws IOException {
    Path file = write("willow-bench.db", "my notes\n".repeat(100));
    assertSaid(
        run("records", station),
        4,
        "%s is not a Restpoint journal and was left as it is; name another file".formatted(file));
  }

  @ParameterizedTest
  @CsvSource({
    "results, text",
    "calibrations, text",
    "notices, text",
    "readings, text",
    "instructions, text",
    "budgets, jsonl",
    "summary, jsonl",
    "notices, geojson",
    "readings, senml"
  })
  void recordsInAFormThatTheyDoNotHave(String of, String as) {
    assertSaid(
        run("records", station, "--of", of, "--as", as),
        2,
        "--of %s cannot be written --as %s".formatted(of, as));
  }

  @ParameterizedTest
  @CsvSource({
    "results, csv",
    "results, jsonl",
    "calibrations, jsonl",
    "notices, csv",
    "readings, jsonl",
    "instructions, csv",
    "budgets, csv",
    "budgets, text",
    "summary, csv",
    "summary, text",
    "results, senml",
    "results, geojson"
  })
  void recordsInAFormThatTheyHaveGetAsFarAsTheJournal(String of, String as) {
    assertThat(run("records", station, "--of", of, "--as", as).exitStatus()).isEqualTo(4);
  }

  @Test
  void recordsFromATimeThatIsNone() {
    run("records", station, "--from", "yesterday")
        .isUsage(
            "Invalid value for option '--from': expected a time by ISO 8601 in UTC, like"
                + " 2026-04-02T14:03:00Z; found yesterday",
            "Usage: restpoint records [-hV] [--latest] [--as=<as>] [--from=TIME] [--of=<of>]");
  }

  @Test
  void aRecordingThatIsNotThere() {
    Path absent = folder.resolve("absent.csv");
    assertSaid(run("replay", station, absent), 4, "there is no recording " + absent);
  }

  @Test
  void aRecordingWithAnotherHeader() throws IOException {
    Path wrong = write("wrong.csv", "time;probe;mV\n0;no3-a;1\n");
    assertSaid(
        run("replay", station, wrong),
        4,
        ("%s line 1: expected the header time,probe,millivolts,celsius, found time;probe;mV."
                + " Its columns are \"time\", \"probe\", \"mV\". Say under link.recording which is"
                + " which: delimiter: semicolon, columns: { time: \"time\", probe: \"probe\","
                + " millivolts: \"mV\" }")
            .formatted(wrong));
  }

  @Test
  void instructionLinesThatCannotBeRead() throws IOException {
    Path recording = write("good.csv", "time,probe,millivolts,celsius\n0,no3-a,1,\n");
    Path bad =
        write(
            "bad.jsonl",
            """
            {"time":0,"probe":"no3-a","do":"measure"}
            {"do":"measure"}

            {"time":1,"do":"measure"}
            {"time":1,"probe":"no3-a","do":"mesure"}
            """);
    assertSaid(
        run("replay", station, recording, "--instructions", bad),
        4,
        """
        %1$s line 2: time is missing: expected when it was given, as in the recording
        %1$s line 4: probe is missing: expected the probe it is for
        %1$s line 5: do: expected an instruction (%2$s); found mesure"""
            .formatted(bad, WORDS));
    Path absent = folder.resolve("absent.jsonl");
    assertSaid(
        run("replay", station, recording, "--instructions", absent), 4, absent + " is not there");
  }
}
