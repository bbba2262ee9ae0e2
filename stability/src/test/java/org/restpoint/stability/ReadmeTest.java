package org.restpoint.stability;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.restpoint.stability.calibration.Calibrator;
import org.restpoint.stability.calibration.Compensation;
import org.restpoint.stability.calibration.LowEnd;
import org.restpoint.stability.calibration.ResponseCurve;
import org.restpoint.stability.calibration.RestedSample;
import org.restpoint.stability.calibration.SlopeLimits;
import org.restpoint.stability.calibration.StandardPoint;
import org.restpoint.stability.chemistry.Analyte;
import org.restpoint.stability.chemistry.Basis;
import org.restpoint.stability.chemistry.Concentration;
import org.restpoint.stability.chemistry.ConcentrationUnit;
import org.restpoint.stability.fault.Fault;
import org.restpoint.stability.interference.Background;
import org.restpoint.stability.interference.Interferent;
import org.restpoint.stability.uncertainty.BudgetTable;

/** The module's README says what the code does. Maven runs tests in the module's folder. */
class ReadmeTest {

  private static final String README = read(Path.of("README.md"));

  private static final Path MAIN = Path.of("src/main/java/org/restpoint/stability");
  private static final Path TEST = Path.of("src/test/java/org/restpoint/stability");

  /** The first argument of a reason, or of the method that makes one for a thermometer. */
  private static final Pattern CODE_ARGUMENT = Pattern.compile("(?:new Reason|because)\\(([^,]*),");

  private static final Pattern CODE = Pattern.compile("\"([a-z]+(?:-[a-z]+)+)\"");
  private static final Pattern INLINE = Pattern.compile("`([^`\n]+)`");

  @Test
  void everyClassInAHeadingIsInTheSources() {
    List<String> named =
        README
            .lines()
            .filter(line -> line.startsWith("#"))
            .flatMap(line -> INLINE.matcher(line).results().map(name -> name.group(1)))
            .toList();
    assertThat(named).hasSizeGreaterThan(40);
    assertThat(classes(MAIN)).containsAll(named);
  }

  @Test
  void everyNameOfTheCodeIsInTheSources() {
    Set<String> words = new TreeSet<>();
    for (Path source : Stream.of(MAIN, TEST).flatMap(room -> sources(room).stream()).toList()) {
      Pattern.compile("\\w+(?:-\\w+)*")
          .matcher(read(source))
          .results()
          .forEach(word -> words.addAll(List.of(word.group(), word.group().split("-", -1)[0])));
    }
    words.addAll(packages());
    String text = README.replaceAll("(?s)\n```.*?\n```\n", "\n");
    Set<String> named = new TreeSet<>();
    for (String code : INLINE.matcher(text).results().map(found -> found.group(1)).toList()) {
      if (code.matches("[\\w.-]+(\\(\\w*\\))?") && !code.matches(".*\\.\\w{2,4}")) {
        named.addAll(Arrays.asList(code.replaceAll("\\(\\w*\\)", "").split("\\.", -1)));
      }
    }
    assertThat(named).hasSizeGreaterThan(200);
    assertThat(words).containsAll(named);
  }

  @Test
  void itsPackagesAreThoseOfTheModule() {
    assertThat(firstColumn("package")).isNotEmpty().doesNotHaveDuplicates();
    assertThat(firstColumn("package")).containsExactlyInAnyOrderElementsOf(packages());
  }

  @Test
  void everyTestOfAPublishedValueExists() {
    List<String> rows = table("check");
    assertThat(rows).hasSizeGreaterThan(60);
    for (String row : rows) {
      String[] cells = row.split("(?<!\\\\)\\|", -1);
      assertThat(cells).as(row).hasSize(5);
      List<String> tests = INLINE.matcher(cells[3]).results().map(t -> t.group(1)).toList();
      assertThat(tests).as(row).isNotEmpty();
      assertThat(classes(TEST)).as(row).containsAll(tests);
    }
  }

  @Test
  void itsCodesAreThoseOfTheModule() {
    Set<String> inSources = new TreeSet<>();
    for (Path source : sources(MAIN)) {
      Matcher argument = CODE_ARGUMENT.matcher(read(source));
      while (argument.find()) {
        CODE.matcher(argument.group(1)).results().forEach(code -> inSources.add(code.group(1)));
      }
    }
    Arrays.stream(Fault.values()).forEach(fault -> inSources.add(fault.code()));
    assertThat(inSources).contains("slope-low", "gran-wrong-way", "check-high", "input-open");
    assertThat(firstColumn("code")).doesNotHaveDuplicates();
    assertThat(firstColumn("code")).containsExactlyInAnyOrderElementsOf(inSources);
  }

  @Test
  void everyReferenceIsCitedAndEveryCitationHasItsReference() {
    int references = README.indexOf("\n## References\n");
    List<Integer> numbers =
        Pattern.compile("^(\\d+)\\. ", Pattern.MULTILINE)
            .matcher(README.substring(references))
            .results()
            .map(number -> Integer.valueOf(number.group(1)))
            .toList();
    assertThat(numbers)
        .isEqualTo(IntStream.rangeClosed(1, numbers.size()).boxed().toList())
        .hasSizeGreaterThan(50);
    Set<Integer> cited =
        Pattern.compile("\\[(\\d+(?:[,;][^\\]\\[]*)?)\\]")
            .matcher(README)
            .results()
            .flatMap(citation -> Arrays.stream(citation.group(1).split(";", -1)))
            .map(part -> Integer.valueOf(part.strip().split(",", 2)[0]))
            .collect(Collectors.toCollection(TreeSet::new));
    assertThat(cited).containsExactlyElementsOf(numbers);
  }

  @Test
  void itsBudgetIsWhatTheCodePrints() {
    assertThat(block("text")).isEqualTo(budget());
  }

  /** An invented nitrate electrode: three standards at 24 °C, then water with chloride at 17 °C. */
  private static String budget() {
    Analyte nitrate = Analyte.named("nitrate").orElseThrow();
    List<StandardPoint> points = new ArrayList<>();
    double[] milligrams = {1, 10, 100};
    double[] millivolts = {287.9, 231.6, 174.9};
    for (int i = 0; i < milligrams.length; i++) {
      double molesPerLitre =
          new Concentration(milligrams[i], ConcentrationUnit.MILLIGRAMS_PER_LITRE, Basis.AS_N)
              .molesPerLitre(nitrate);
      points.add(
          new StandardPoint(
              "standard", molesPerLitre, 0.01, 1, millivolts[i], 0.15, 24, Instant.EPOCH));
    }
    ResponseCurve curve =
        new Calibrator(
                nitrate.charge(),
                new SlopeLimits(90, 103),
                new LowEnd.Straight(),
                Compensation.isopotential(-2.5, 0.3),
                0.005)
            .judge(points, Optional.empty())
            .curve()
            .orElseThrow();
    Background chloride =
        Background.of(
            nitrate.charge(), List.of(new Interferent("chloride", -1, 0.005, 2e-3, 0.1, 0.4)));
    return BudgetTable.of(
            curve
                .read(
                    RestedSample.of(222.3, 0.15, 17, 0.3)
                        .withBackground(chloride.molesPerLitre(), chloride.standardUncertainty()))
                .budget("nitrate", "mg/L", c -> 1000 * nitrate.gramsPerMole(Basis.AS_N) * c))
        .text();
  }

  private static String block(String language) {
    int from = README.indexOf("```" + language + "\n") + language.length() + 4;
    return README.substring(from, README.indexOf("\n```\n", from) + 1);
  }

  /** The code that opens each row of all tables whose first column is called so. */
  private static List<String> firstColumn(String heading) {
    List<String> names = new ArrayList<>();
    for (String row : table(heading)) {
      Matcher name = Pattern.compile("^\\| `([^`]+)` \\|").matcher(row);
      assertThat(name.find()).as(row).isTrue();
      names.add(name.group(1));
    }
    return names;
  }

  /** The rows of all tables whose first column is called so, without their heads. */
  private static List<String> table(String heading) {
    List<String> rows = new ArrayList<>();
    boolean inside = false;
    for (String line : README.lines().toList()) {
      if (line.startsWith("| " + heading + " |")) {
        inside = true;
      } else if (!line.startsWith("|")) {
        inside = false;
      } else if (inside && !line.startsWith("|---")) {
        rows.add(line);
      }
    }
    return rows;
  }

  private static List<String> packages() {
    return sources(MAIN).stream()
        .map(source -> MAIN.relativize(source).getName(0).toString())
        .distinct()
        .toList();
  }

  private static List<String> classes(Path room) {
    return sources(room).stream()
        .map(source -> source.getName(source.getNameCount() - 1).toString().replace(".java", ""))
        .toList();
  }

  private static List<Path> sources(Path room) {
    try (Stream<Path> files = Files.walk(room)) {
      return files.filter(path -> path.toString().endsWith(".java")).sorted().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String read(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
