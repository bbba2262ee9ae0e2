package org.restpoint.config.file;

import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;

/** A mapping of the file, by key in the file's order. */
final class Section {

  private final Entry self;
  private final Map<String, Entry> children = new LinkedHashMap<>();
  private final Map<String, Node> keyNodes = new LinkedHashMap<>();
  private final Map<String, Integer> keyLines = new LinkedHashMap<>();
  private final Set<String> misspelled = new HashSet<>();
  private int unknown;

  private Section(Entry self) {
    this.self = self;
  }

  /** Reads the keys and tells those that are no words and those that stand twice. */
  static Section of(Entry self, MappingNode mapping) {
    Section section = new Section(self);
    for (NodeTuple tuple : mapping.getValue()) {
      section.take(tuple.getKeyNode(), tuple.getValueNode());
    }
    return section;
  }

  private void take(Node keyNode, Node value) {
    int line = Entry.lineOf(keyNode);
    if (!(keyNode instanceof ScalarNode scalar)) {
      String kind = keyNode instanceof MappingNode ? "a mapping" : "a list";
      String where = self.key().isEmpty() ? "?" : self.key();
      self.problems().add(where, line, "a word as key", kind);
      return;
    }
    String name = scalar.getValue();
    Entry child = self.child(name, line, value);
    Integer first = keyLines.putIfAbsent(name, line);
    if (first != null) {
      String found = "it again, first on line " + first;
      self.problems().add(child.key(), line, "this key once", found, "take one of them out");
      return;
    }
    children.put(name, child);
    keyNodes.put(name, keyNode);
  }

  Entry self() {
    return self;
  }

  /** The values by key, in the file's order. */
  Map<String, Entry> children() {
    return Collections.unmodifiableMap(children);
  }

  /** Tells every key that is not among the known ones, with the one that was meant. */
  void only(List<String> known) {
    only(known, Map.of());
  }

  /**
   * The same, for a kind of thing that could be mistaken for another.
   *
   * @param known the keys of this kind
   * @param foreign the keys of the other kind
   * @param remedy what to do about one of those
   */
  void only(List<String> known, List<String> foreign, String remedy) {
    only(known, foreign.stream().collect(Collectors.toMap(key -> key, key -> remedy)));
  }

  /**
   * The same, where what to do is not the same for all of them.
   *
   * @param known the keys of this kind
   * @param foreign the keys of other kinds, each with what to do about it
   */
  void only(List<String> known, Map<String, String> foreign) {
    List<String> absent = known.stream().filter(word -> !has(word)).toList();
    children.forEach(
        (name, child) -> {
          if (foreign.containsKey(name)) {
            tellUnknown(name, child, known, Optional.ofNullable(foreign.get(name)));
          } else if (!known.contains(name)) {
            tellUnknown(name, child, known, meant(name, absent));
          }
        });
  }

  private Optional<String> meant(String name, List<String> absent) {
    Optional<String> meant = Spelling.nearest(name, absent);
    meant.ifPresent(misspelled::add);
    boolean decimals = !name.isEmpty() && Character.isDigit(name.charAt(0));
    return decimals
        ? Optional.of("write decimals with a point: a comma begins the next key")
        : meant.map(word -> "did you mean " + word + "?");
  }

  private void tellUnknown(String name, Entry child, List<String> known, Optional<String> remedy) {
    unknown++;
    String expected = (known.size() > 1 ? "one of " : "") + String.join(", ", known);
    self.problems()
        .add(new Problem(child.key(), keyLine(name), expected, Wording.shown(name), remedy));
  }

  boolean has(String key) {
    return children.containsKey(key);
  }

  Optional<Entry> find(String key) {
    return Optional.ofNullable(children.get(key));
  }

  /** The value of a key that must be there; a key told as misspelled is not told as missing too. */
  Optional<Entry> need(String key, String expected) {
    Optional<Entry> value = find(key);
    if (value.isEmpty() && !misspelled.contains(key)) {
      String path = self.key().isEmpty() ? key : self.key() + "." + key;
      self.problems().add(path, self.line(), expected, "nothing");
    }
    return value;
  }

  /** A key as a value of its own, for keys that are quantities. */
  Entry keyEntry(String name) {
    Node key = Objects.requireNonNull(keyNodes.get(name), name);
    return self.child(name, keyLine(name), key);
  }

  /** The line of a key, for a problem with the key rather than its value. */
  int keyLine(String key) {
    return keyLines.getOrDefault(key, self.line());
  }

  /**
   * The one key that says which kind of thing this is. Tells where none or several are there.
   *
   * @param kinds the keys of which exactly one must be there
   */
  Optional<String> kind(List<String> kinds) {
    List<String> there = kinds.stream().filter(children::containsKey).toList();
    if (there.size() == 1) {
      return Optional.of(there.get(0));
    }
    boolean told = unknown == children.size() && unknown > 0;
    if (there.isEmpty() && (told || kinds.stream().anyMatch(misspelled::contains))) {
      return Optional.empty();
    }
    String found = there.isEmpty() ? "none of them" : Wording.row(there, "and");
    self.refuse("exactly one of " + String.join(", ", kinds), found);
    return Optional.empty();
  }

  /** Whether a key was told as misspelled and meant this one. */
  boolean meant(String key) {
    return misspelled.contains(key);
  }
}
