package org.restpoint.acquisition.demo;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.acquisition.event.EventJson;

/** The demo as a person runs it, and after it the commands that its account ends with. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class DemoIT {

  private static final String JAR =
      Path.of(System.getProperty("restpoint.jar", "")).toAbsolutePath().toString();

  private Path here = Path.of("");

  private Ran demo = new Ran(-1, "", "");

  private record Ran(int exitStatus, String out, String err) {}

  @BeforeAll
  void runIt(@TempDir Path folder) throws IOException, InterruptedException {
    here = folder;
    demo = run("java", "-jar", JAR, "demo", "--speed", "300");
  }

  @Test
  void itEndsWellAndTellsOfNoFailureOnStandardError() {
    assertThat(demo.err()).doesNotContain("ERROR", "Exception", "restpoint:");
    assertThat(demo.exitStatus()).as(demo.out()).isZero();
  }

  /** Wherever its lines are broken. */
  @Test
  void itsAccountTellsTheStepsInTheirOrder() {
    assertThat(demo.out().replaceAll("\\s+", " "))
        .containsSubsequence(
            "SOAK",
            "{\"do\":\"soak\", \"minutes\":20}",
            "Next: Rinse and blot the electrode, put it into standard low",
            "CALIBRATE",
            "ACCEPTED (low)",
            "REFUSED (low, mid), slope-high: the slope is",
            "NO NUMBER, calibration-refused: the last standard was refused",
            "ACCEPTED (low, mid): the slope is",
            "ACCEPTED (low, mid, high): the slope is",
            "A SOIL SAMPLE",
            "Foretold to rest at ",
            " before; it read ",
            "RESULT ",
            "quality 1 (pass)",
            "The number is of the extract as it was read.",
            "A TILE-WATER SAMPLE",
            "ACCEPTED (mid): a new offset; the slope is kept",
            "RESULT ",
            "quality 3 (suspect)",
            "flag standard-due",
            "CHECK",
            "recovery ",
            "WHAT WAS FOUND",
            " \u00b1 ",
            "A screening result, not a certified laboratory analysis.",
            "LOOK FURTHER");
  }

  @Test
  void itsLinesFitATerminalButForTheCommands() {
    assertThat(demo.out().lines().takeWhile(line -> !line.startsWith("LOOK FURTHER")))
        .isNotEmpty()
        .allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(100));
  }

  @Test
  void theJournalKeepsTheResultsAndAReplayGivesTheSameToTheLastDigit()
      throws IOException, InterruptedException {
    List<String> commands = commands();
    assertThat(commands).hasSize(5);
    Ran replayed = new Ran(-1, "", "");
    for (String command : commands) {
      replayed = run("sh", "-c", command);
      assertThat(replayed.exitStatus()).as("%s: %s", command, replayed.err()).isZero();
    }
    List<String> results = records("results");
    List<String> calibrations = records("calibrations");

    assertThat(results).hasSize(5);
    assertThat(results.stream().map(result -> field(result, "/outcome")))
        .containsExactly("refused", "settled", "settled", "settled", "settled");
    assertThat(results.stream().map(result -> field(result, "/sample/number")))
        .containsExactly("S-101", "S-101", "W-7", "W-7", "");
    assertThat(results.stream().map(result -> field(result, "/reported/kind")).skip(1))
        .containsOnly("solution as measured");
    assertThat(calibrations.stream().map(calibration -> field(calibration, "/verdict")))
        .containsExactly("accepted", "refused", "accepted", "accepted", "accepted");
    assertThat(events(replayed.out(), "result")).isEqualTo(results);
    assertThat(events(replayed.out(), "calibration")).isEqualTo(calibrations);
  }

  @Test
  void eachNumberHasItsBudgetAsATableAndAsCsv() throws IOException, InterruptedException {
    List<String> ids =
        records("results").stream()
            .filter(result -> field(result, "/outcome").equals("settled"))
            .map(result -> field(result, "/id"))
            .toList();
    List<String> tables = records("budgets", "text");
    List<String> rows = records("budgets", "csv");

    assertThat(tables.stream().filter(line -> line.endsWith(" (k = 1)")))
        .extracting(line -> line.split(" ", 2)[0])
        .containsExactlyElementsOf(ids);
    assertThat(tables.stream().filter(line -> line.startsWith("potential at rest, foretold")))
        .hasSize(ids.size());
    assertThat(rows.get(0)).startsWith("id,source,estimate,standardUncertainty,unit,");
    assertThat(rows.stream().skip(1).map(row -> row.split(",", 2)[0]).distinct())
        .containsExactlyElementsOf(ids);
  }

  @Test
  void aFolderOfSomebodyElseIsRefusedInASentence() throws IOException, InterruptedException {
    Path theirs = Files.createDirectory(here.resolve("theirs"));
    Files.writeString(theirs.resolve("notes.txt"), "mine");

    Ran refused = run("java", "-jar", JAR, "demo", "--folder", "theirs");

    assertThat(refused.exitStatus()).isEqualTo(4);
    assertThat(refused.out()).isEmpty();
    assertThat(refused.err())
        .isEqualTo(
            "restpoint: theirs holds something else than a former demo, so nothing was touched;"
                + " name another folder with --folder\n");
    assertThat(theirs).isDirectoryNotContaining("glob:**station.yaml");
  }

  @Test
  void aPortThatIsTakenIsToldWithWhatToDo() throws IOException, InterruptedException {
    try (ServerSocket taken = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      String port = Integer.toString(taken.getLocalPort());

      Ran refused = run("java", "-jar", JAR, "demo", "--folder", "second", "--port", port);

      assertThat(refused.exitStatus()).isEqualTo(4);
      assertThat(refused.err())
          .startsWith("restpoint: the embedded broker cannot listen on 127.0.0.1:" + port)
          .hasLineCount(1);
    }
  }

  @Test
  void aPortThatIsNoneIsWrongUsage() throws IOException, InterruptedException {
    Ran refused = run("java", "-jar", JAR, "demo", "--port", "70000");

    assertThat(refused.exitStatus()).isEqualTo(2);
    assertThat(refused.err()).startsWith("--port: expected 0 to 65535; found 70000");
  }

  /** The commands at the end of the account, as they stand there. */
  private List<String> commands() {
    List<String> commands = new ArrayList<>();
    String joined = demo.out().replace(" \\\n", " ");
    joined
        .lines()
        .filter(line -> line.startsWith("  java -jar "))
        .forEach(line -> commands.add(line.strip()));
    return commands;
  }

  private List<String> records(String what) throws IOException, InterruptedException {
    return records(what, "jsonl");
  }

  private List<String> records(String what, String as) throws IOException, InterruptedException {
    Ran ran =
        run(
            "java",
            "-jar",
            JAR,
            "records",
            "restpoint-demo/station.yaml",
            "--as",
            as,
            "--of",
            what);
    assertThat(ran.exitStatus()).as(ran.err()).isZero();
    return ran.out().lines().toList();
  }

  private static List<String> events(String lines, String kind) {
    return lines.lines().filter(line -> field(line, "/event").equals(kind)).toList();
  }

  private static String field(String json, String pointer) {
    try {
      JsonNode value = EventJson.mapper().readTree(json).at(pointer);
      return value.asText("");
    } catch (JsonProcessingException e) {
      throw new AssertionError("not JSON: " + json, e);
    }
  }

  /** Runs a command in a folder of its own, in a locale that knows no UTF-8. */
  private Ran run(String... command) throws IOException, InterruptedException {
    Path out = Files.createTempFile(here, "run", ".out");
    Path err = Files.createTempFile(here, "run", ".err");
    ProcessBuilder builder =
        new ProcessBuilder(command)
            .directory(here.toFile())
            .redirectOutput(out.toFile())
            .redirectError(err.toFile());
    builder.environment().putAll(Map.of("LANG", "C", "LC_ALL", "C"));
    builder.environment().compute("PATH", (name, path) -> javaFirst(path));
    Process process = builder.start();
    assertThat(process.waitFor(120, TimeUnit.SECONDS)).as(String.join(" ", command)).isTrue();
    return new Ran(process.exitValue(), Files.readString(out, UTF_8), Files.readString(err, UTF_8));
  }

  private static String javaFirst(String path) {
    return Path.of(System.getProperty("java.home"), "bin") + ":" + path;
  }
}
