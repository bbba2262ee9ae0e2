package org.restpoint.config.file;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;
import org.snakeyaml.engine.v2.nodes.Tag;

/**
 * A value of the file with the key it stands under.
 *
 * <p>Nothing is coerced: {@code "10"} is text and {@code 10} is a number. Each reading method tells
 * a value that does not fit and then gives an empty result, so that the rest is still read.
 *
 * @param key the key's path
 * @param line the value's line; for a mapping or a list the line of its key
 * @param node the value
 * @param problems where a value that does not fit is told
 */
record Entry(String key, int line, Node node, Problems problems) {

  static Entry root(Node node, Problems problems) {
    return new Entry("", 1, node, problems);
  }

  Entry child(String name, int keyLine, Node value) {
    String path = key.isEmpty() ? Wording.shown(name) : key + "." + Wording.shown(name);
    boolean own = value instanceof ScalarNode && !Tag.NULL.equals(value.getTag());
    return new Entry(path, own ? lineOf(value) : keyLine, value, problems);
  }

  void refuse(String expected) {
    problems.add(key, line, expected, found());
  }

  void refuse(String expected, String found) {
    problems.add(key, line, expected, found);
  }

  void refuse(String expected, String found, String remedy) {
    problems.add(key, line, expected, found, remedy);
  }

  Optional<String> text(String expected) {
    Optional<String> text = quietText();
    if (text.isEmpty()) {
      refuse(expected);
    }
    return text;
  }

  /** Text that may look like a number: one that is not in quotes is told so. */
  Optional<String> freeText(String expected) {
    if (node instanceof ScalarNode scalar && isPlainNumberOrFlag()) {
      String quoted = "\"" + Wording.shown(scalar.getValue()) + "\"";
      refuse(expected, found() + ", which is not text", "put it in quotes: " + quoted);
      return Optional.empty();
    }
    return text(expected);
  }

  /** The text, or empty where it is none; nothing is told. */
  Optional<String> quietText() {
    return node instanceof ScalarNode scalar && Tag.STR.equals(scalar.getTag())
        ? Optional.of(scalar.getValue())
        : Optional.empty();
  }

  Optional<String> word(List<String> words) {
    return word(words, "");
  }

  Optional<String> word(List<String> words, String because) {
    String expected = (words.size() > 1 ? "one of " : "") + String.join(", ", words) + because;
    Optional<String> text = text(expected);
    if (text.isEmpty() || words.contains(text.get())) {
      return text;
    }
    problems.add(new Problem(key, line, expected, found(), meant(text.get(), words)));
    return Optional.empty();
  }

  Optional<Boolean> flag() {
    if (node instanceof ScalarNode scalar && Tag.BOOL.equals(scalar.getTag())) {
      return Optional.of(Boolean.valueOf(scalar.getValue()));
    }
    refuse("true or false");
    return Optional.empty();
  }

  Optional<Long> whole(long low, long high) {
    String expected = "a whole number from " + low + " to " + high;
    if (node instanceof ScalarNode scalar && Tag.INT.equals(scalar.getTag())) {
      try {
        long number = Long.parseLong(scalar.getValue());
        if (low <= number && number <= high) {
          return Optional.of(number);
        }
      } catch (NumberFormatException e) {
        // Longer than a long: out of range like any other.
      }
    }
    if (quietText().isPresent() && quietText().get().matches("-?\\d{1,18}")) {
      refuse(expected, found() + ", which is text", "leave the quotes out");
    } else {
      refuse(expected);
    }
    return Optional.empty();
  }

  Optional<Section> section(String expected) {
    if (node instanceof MappingNode mapping && Tag.MAP.equals(mapping.getTag())) {
      return Optional.of(Section.of(this, mapping));
    }
    refuse(expected);
    return Optional.empty();
  }

  /** The items of a list that is not empty, or no items after that was told. */
  List<Entry> items(String expected) {
    List<Entry> items = quietItems();
    if (items.isEmpty()) {
      refuse(expected, node instanceof SequenceNode ? "an empty list" : found());
    }
    return items;
  }

  /** The items of a list; nothing is told where it is none. */
  List<Entry> quietItems() {
    List<Entry> items = new ArrayList<>();
    if (node instanceof SequenceNode list && Tag.SEQ.equals(list.getTag())) {
      for (Node item : list.getValue()) {
        items.add(new Entry(key + "[" + items.size() + "]", lineOf(item), item, problems));
      }
    }
    return items;
  }

  /** The value under a path of keys inside this one; nothing is told where it is not there. */
  Optional<Entry> inside(String... path) {
    Optional<Entry> here = Optional.of(this);
    for (String name : path) {
      here = here.flatMap(entry -> entry.quietChild(name));
    }
    return here;
  }

  private Optional<Entry> quietChild(String name) {
    if (!(node instanceof MappingNode mapping)) {
      return Optional.empty();
    }
    return mapping.getValue().stream()
        .filter(t -> t.getKeyNode() instanceof ScalarNode k && k.getValue().equals(name))
        .findFirst()
        .map(t -> child(name, lineOf(t.getKeyNode()), t.getValueNode()));
  }

  /** The plain number, or empty where it is none or not a finite one; nothing is told. */
  Optional<Double> quietNumber() {
    if (node instanceof ScalarNode scalar
        && List.of(Tag.INT, Tag.FLOAT).contains(scalar.getTag())) {
      try {
        return Optional.of(Double.parseDouble(scalar.getValue())).filter(Double::isFinite);
      } catch (NumberFormatException e) {
        // YAML's words for infinity and for no number: neither is a number here.
      }
    }
    return Optional.empty();
  }

  boolean isMapping() {
    return node instanceof MappingNode;
  }

  boolean isPlainNumberOrFlag() {
    return node instanceof ScalarNode
        && List.of(Tag.INT, Tag.FLOAT, Tag.BOOL).contains(node.getTag());
  }

  /** The value as a message shows it. */
  String found() {
    if (node instanceof MappingNode) {
      return "a mapping" + foreignTag(Tag.MAP);
    }
    if (!(node instanceof ScalarNode scalar)) {
      return "a list" + foreignTag(Tag.SEQ);
    }
    if (Tag.NULL.equals(scalar.getTag())) {
      return "nothing";
    }
    String value = Wording.shown(scalar.getValue());
    String shown = scalar.isPlain() ? value : "\"" + value + "\"";
    return isPlainNumberOrFlag() ? shown : shown + foreignTag(Tag.STR);
  }

  private String foreignTag(Tag own) {
    Tag tag = node.getTag();
    return own.equals(tag) ? "" : " with the tag " + Wording.shown(tag.getValue());
  }

  static Optional<String> meant(String written, List<String> known) {
    return Spelling.nearest(written, known).map(word -> "did you mean " + word + "?");
  }

  static int lineOf(Node node) {
    return node.getStartMark().map(YamlDocument::lineOf).orElse(0);
  }
}
