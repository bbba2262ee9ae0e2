package org.restpoint.acquisition.endtoend;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.restpoint.acquisition.command.Commands;
import picocli.CommandLine;

/** What the pages at the top and in the rooms point to is there. */
class PagesTest {

  private static final Pattern MODULE = Pattern.compile("<module>(\\w+)</module>");

  static List<String> pages() {
    return List.of(
        "README.md",
        "DEVELOPERS.md",
        "acquisition/README.md",
        "adapters/README.md",
        "config/README.md",
        "stability/README.md");
  }

  @ParameterizedTest
  @MethodSource("pages")
  void everyLinkLeadsToSomethingThatIsThere(String path) {
    Page page = Page.of(path);
    for (String link : page.links()) {
      if (link.matches("[a-z]+:.*")) {
        continue;
      }
      String[] parts = link.split("#", 2);
      Path file = parts[0].isEmpty() ? page.file() : page.file().resolveSibling(parts[0]);
      assertThat(file).as(link).exists();
      if (parts.length == 2) {
        assertThat(new Page(file, Page.read(file)).anchors()).as(link).contains(parts[1]);
      }
    }
  }

  @Test
  void thePageAtTheTopLeadsToAllOthers() {
    List<String> others = new ArrayList<>(pages());
    others.remove("README.md");
    assertThat(Page.of("README.md").links()).containsAll(others).contains("LICENSE");
  }

  /**
   * A command that is only named must exist; one with arguments must be understood as it stands.
   */
  @ParameterizedTest
  @MethodSource("pages")
  void everyCommandIsOneThatTheCommandLineTakes(String path) {
    for (String command : Page.of(path).commands()) {
      List<String> words =
          Arrays.asList(command.split(" ", -1)).subList(1, command.split(" ", -1).length);
      CommandLine line = Commands.line();
      assertThat(line.getSubcommands()).as(command).containsKey(words.get(0));
      if (words.size() > 1) {
        assertThat(line.parseArgs(words.toArray(String[]::new)).errors()).as(command).isEmpty();
      }
    }
  }

  @Test
  void thePagesNameAllCommands() {
    List<String> named = new ArrayList<>();
    pages().forEach(page -> named.addAll(Page.of(page).commands()));
    assertThat(named.stream().map(command -> command.split(" ", 3)[1]).toList())
        .containsAll(Commands.line().getSubcommands().keySet());
  }

  @Test
  void theTestsOfTheSecondCommandAreThoseOfTheContinuousBuild() throws IOException {
    String second = Page.of("README.md").blocks("sh").get(1).strip();
    Path build = Page.TOP.resolve(".ci/run");
    assertThat(second).isEqualTo("mvn verify");
    assertThat(build).isExecutable();
    List<String> lines = Files.readAllLines(build);
    assertThat(lines.get(lines.size() - 1).replaceAll(" -\\S+", "")).isEqualTo(second);
  }

  @Test
  void theBuildGoesThroughAllRooms() throws IOException {
    List<String> modules =
        MODULE
            .matcher(Page.read(Page.TOP.resolve("pom.xml")))
            .results()
            .map(module -> module.group(1))
            .toList();
    try (Stream<Path> folders = Files.list(Page.TOP)) {
      assertThat(modules)
          .containsExactlyInAnyOrderElementsOf(
              folders
                  .filter(folder -> Files.exists(folder.resolve("pom.xml")))
                  .map(folder -> folder.getFileName().toString())
                  .toList());
    }
  }

  /** Without these goals the tests that run the jar would be passed over. */
  @ParameterizedTest
  @ValueSource(strings = {"integration-test", "verify"})
  void verifyRunsTheTestsOfTheJar(String goal) {
    String pom = Page.read(Page.TOP.resolve("acquisition/pom.xml"));
    String failsafe = pom.substring(pom.indexOf("maven-failsafe-plugin"));
    assertThat(failsafe).contains("<goal>%s</goal>".formatted(goal));
  }
}
