package org.restpoint.config.file;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Collects what is wrong with one file. */
final class Problems {

  private final List<Problem> found = new ArrayList<>();

  void add(Problem problem) {
    found.add(problem);
  }

  void add(String key, int line, String expected, String what) {
    add(new Problem(key, line, expected, what, Optional.empty()));
  }

  void add(String key, int line, String expected, String what, String remedy) {
    add(new Problem(key, line, expected, what, Optional.of(remedy)));
  }

  boolean isEmpty() {
    return found.isEmpty();
  }

  /** The problems by line; those of one line in the order they were found. */
  List<Problem> byLine() {
    return found.stream().sorted(Comparator.comparingInt(Problem::line)).toList();
  }
}
