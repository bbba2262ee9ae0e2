package org.restpoint.acquisition.endtoend;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;

/**
 * A page in Markdown.
 *
 * @param file where it is
 * @param text what stands in it
 */
record Page(Path file, String text) {

  /** The folder that holds the four rooms; tests run in one of them. */
  static final Path TOP = Path.of("..").toAbsolutePath().normalize();

  private static final Pattern FENCE =
      Pattern.compile(
          "^```(?<language>\\w*)\n(?<code>.*?)^```$", Pattern.DOTALL | Pattern.MULTILINE);

  private static final Pattern INLINE_CODE = Pattern.compile("`([^`]+)`");

  private static final Pattern COMMAND =
      Pattern.compile("(?:restpoint|java -jar \\S*restpoint\\.jar) (?<arguments>[^>|&]*)");

  private static final Pattern LINK = Pattern.compile("\\[[^]]*]\\((?<target>[^)\\s]+)\\)");

  private static final Pattern HEADING = Pattern.compile("^#+ (.*)$", Pattern.MULTILINE);

  /** Reads one, by its path from the top. */
  static Page of(String path) {
    Path file = TOP.resolve(path);
    return new Page(file, read(file));
  }

  static String read(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The block of code under a comment that names it as an example. */
  String example(String name) {
    Pattern marked =
        Pattern.compile(
            "^<!-- example: " + Pattern.quote(name) + " -->\n" + FENCE.pattern(), FENCE.flags());
    return marked
        .matcher(text)
        .results()
        .findFirst()
        .map(found -> found.group(2))
        .orElseThrow(() -> new AssertionError("%s has no example %s".formatted(file, name)));
  }

  /** All blocks in one language. */
  List<String> blocks(String language) {
    return FENCE
        .matcher(text)
        .results()
        .filter(block -> block.group(1).equals(language))
        .map(block -> block.group(2))
        .toList();
  }

  /** All commands for a terminal, in blocks and in sentences, as {@code restpoint check …}. */
  List<String> commands() {
    List<String> code = new ArrayList<>();
    blocks("sh").forEach(block -> code.addAll(block.lines().toList()));
    code.addAll(inSentences(INLINE_CODE));
    return code.stream()
        .map(part -> part.replaceAll("\\s+", " "))
        .flatMap(part -> COMMAND.matcher(part).results())
        .map(command -> "restpoint " + command.group(1).strip())
        .toList();
  }

  /** Where its links lead to. */
  List<String> links() {
    return inSentences(LINK);
  }

  /** The names under which its headings can be linked to. */
  List<String> anchors() {
    return inSentences(HEADING).stream()
        .map(
            heading ->
                heading.toLowerCase(Locale.ROOT).replaceAll("[^\\w\\- ]", "").replace(' ', '-'))
        .toList();
  }

  private List<String> inSentences(Pattern pattern) {
    return pattern
        .matcher(FENCE.matcher(text).replaceAll(""))
        .results()
        .map((MatchResult found) -> found.group(1))
        .toList();
  }
}
