package org.restpoint.config.file;

import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.regex.Pattern;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Compose;
import org.snakeyaml.engine.v2.api.lowlevel.Parse;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.ReaderException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.schema.JsonSchema;

/**
 * One YAML document in UTF-8 as a tree of nodes with their lines.
 *
 * <p>The JSON schema of YAML 1.2 decides which plain words are numbers, {@code true}, {@code false}
 * or {@code null}; all others are text. Anchors and aliases are followed, merge keys are not.
 */
final class YamlDocument {

  /** A station file nests eight deep; more is a mistake, and very much more would end the stack. */
  private static final int DEEPEST = 32;

  /** The parser's own advice after its reason. */
  private static final Pattern ASIDE = Pattern.compile("\\.? \\(.*");

  private static final String ONE_FILE = "a station file in YAML";

  private final String name;
  private final Problems problems;

  YamlDocument(String name, Problems problems) {
    this.name = name;
    this.problems = problems;
  }

  /** The document's root, or empty after the problem was told. */
  Optional<Node> root(byte[] bytes) {
    return decoded(bytes).flatMap(this::parsed);
  }

  private Optional<String> decoded(byte[] bytes) {
    CharsetDecoder decoder =
        StandardCharsets.UTF_8
            .newDecoder()
            .onMalformedInput(CodingErrorAction.REPORT)
            .onUnmappableCharacter(CodingErrorAction.REPORT);
    ByteBuffer in = ByteBuffer.wrap(bytes);
    CharBuffer out = CharBuffer.allocate(bytes.length + 1);
    CoderResult result = decoder.decode(in, out, true);
    out.flip();
    String text = out.toString();
    if (result.isError()) {
      String found = "the byte 0x%02x that is not UTF-8".formatted(bytes[in.position()] & 0xff);
      problems.add(name, lineAt(text, text.length()), "a text file in UTF-8", found);
      return Optional.empty();
    }
    return Optional.of(text.startsWith("\uFEFF") ? text.substring(1) : text);
  }

  private Optional<Node> parsed(String text) {
    LoadSettings settings =
        LoadSettings.builder().setSchema(new JsonSchema()).setAllowNonScalarKeys(true).build();
    try {
      if (!isOneShallowDocument(new Parse(settings).parseString(text))) {
        return Optional.empty();
      }
      return new Compose(settings).composeString(text);
    } catch (MarkedYamlEngineException e) {
      tellSyntax(e);
    } catch (ReaderException e) {
      int line = lineAt(text, text.offsetByCodePoints(0, e.getPosition()));
      String found = "the unprintable character U+%04X".formatted(e.getCodePoint());
      problems.add(name, line, ONE_FILE, found);
    } catch (YamlEngineException e) {
      String found = "a YAML error: " + Wording.shown(String.valueOf(e.getMessage()));
      problems.add(name, 0, ONE_FILE, found);
    }
    return Optional.empty();
  }

  private boolean isOneShallowDocument(Iterable<Event> events) {
    int documents = 0;
    int nodes = 0;
    int depth = 0;
    for (Event event : events) {
      switch (event.getEventId()) {
        case DocumentStart -> documents++;
        case SequenceStart, MappingStart -> {
          nodes++;
          depth++;
        }
        case SequenceEnd, MappingEnd -> depth--;
        case Scalar, Alias -> nodes++;
        default -> {}
      }
      int line = event.getStartMark().map(YamlDocument::lineOf).orElse(0);
      if (documents > 1) {
        problems.add(name, line, "one YAML document", "a second one", "take one of them out");
        return false;
      }
      if (depth > DEEPEST) {
        problems.add(name, line, ONE_FILE, "more than " + DEEPEST + " levels of nesting");
        return false;
      }
    }
    if (documents == 0 || nodes == 0) {
      problems.add(name, 1, ONE_FILE, "an empty file", "begin with: station: a-name");
      return false;
    }
    return true;
  }

  private void tellSyntax(MarkedYamlEngineException e) {
    int line = e.getProblemMark().or(e::getContextMark).map(YamlDocument::lineOf).orElse(0);
    String fault = e.getProblem() == null ? "no reason given" : e.getProblem();
    Optional<String> remedy =
        fault.contains("TAB")
            ? Optional.of("indent with spaces, never with tabs")
            : Optional.empty();
    String found = "a YAML error: " + Wording.shown(ASIDE.matcher(fault).replaceFirst(""));
    problems.add(new Problem(name, line, ONE_FILE, found, remedy));
  }

  static int lineOf(Mark mark) {
    return mark.getLine() + 1;
  }

  private static int lineAt(String text, int end) {
    return 1 + (int) text.substring(0, end).chars().filter(c -> c == '\n').count();
  }
}
