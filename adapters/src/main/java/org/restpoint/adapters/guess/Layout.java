package org.restpoint.adapters.guess;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.restpoint.adapters.line.DecimalMark;

/**
 * What most lines of a sample have in common.
 *
 * @param columns what stands at each place, from left to right
 * @param lines how many lines look so
 */
record Layout(List<Column> columns, int lines) {

  Layout {
    columns = List.copyOf(columns);
  }

  /** That of the lines that look like most do. */
  static Layout of(List<String> lines, DecimalMark decimal) {
    Map<String, List<List<Token>>> byLooks = new HashMap<>();
    List<List<Token>> most = List.of();
    for (String line : lines) {
      List<Token> tokens = Tokens.of(line, decimal);
      List<List<Token>> alike =
          byLooks.computeIfAbsent(Tokens.looks(tokens), looks -> new ArrayList<>());
      alike.add(tokens);
      most = alike.size() > most.size() ? alike : most;
    }
    List<Column> columns = new ArrayList<>();
    for (int at = 0; !most.isEmpty() && at < most.get(0).size(); at++) {
      List<Token> column = new ArrayList<>();
      for (List<Token> tokens : most) {
        column.add(tokens.get(at));
      }
      columns.add(Column.of(column, decimal));
    }
    return new Layout(columns, most.size());
  }

  /** A number for a person: {@code number 2 of the line (21.5 to 21.7)}. */
  String shown(int place) {
    return "number %d of the line (%s)"
        .formatted(numbers().indexOf(place) + 1, columns.get(place).shown());
  }

  /** The places of its numbers. */
  List<Integer> numbers() {
    List<Integer> places = new ArrayList<>();
    for (int i = 0; i < columns.size(); i++) {
      if (columns.get(i).isNumber()) {
        places.add(i);
      }
    }
    return places;
  }
}
