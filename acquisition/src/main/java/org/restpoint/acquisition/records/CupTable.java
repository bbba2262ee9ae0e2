package org.restpoint.acquisition.records;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.acquisition.instruction.Cup;
import org.restpoint.acquisition.instruction.InstructionException;

/**
 * The cups of a batch as people list them: CSV by RFC 4180 with a column for each key of a cup and
 * a row for each cup, as spreadsheets write it. An empty cell is a key that is left out. All
 * mistakes are told at once, each with its line.
 */
public final class CupTable {

  /** The columns that a list may have. */
  public static final List<String> COLUMNS =
      List.of(
          "cup", "standard", "sample", "check", "blank", "duplicate", "spike", "rinse", "recipe");

  /** Columns whose cells say yes. */
  private static final Set<String> YES_COLUMNS = Set.of("blank", "rinse");

  private static final Set<String> YES = Set.of("true", "yes", "x", "1");

  private final ArrayNode cups = EventJson.mapper().createArrayNode();
  private final List<String> problems = new ArrayList<>();

  private CupTable() {}

  /**
   * Reads a list.
   *
   * @return the cups as a {@code batch} has them
   * @throws InstructionException in words for the person, each mistake on a line of its own
   */
  public static ArrayNode read(Path file) {
    CupTable table = new CupTable();
    try {
      table.take(Spreadsheet.read(file));
    } catch (Spreadsheet.NotATableException e) {
      throw new InstructionException(e.problem());
    }
    if (table.problems.isEmpty() && table.cups.isEmpty()) {
      table.problems.add("expected a line of column names and a line for each cup; found none");
    }
    if (!table.problems.isEmpty()) {
      throw new InstructionException(String.join("\n", table.problems));
    }
    return table.cups;
  }

  private void take(Spreadsheet sheet) {
    List<String> columns = List.of();
    for (Spreadsheet.Line line : sheet.lines()) {
      if (columns.isEmpty()) {
        columns = line.cells().stream().map(name -> name.toLowerCase(Locale.ROOT)).toList();
        header(line.number(), columns);
      } else {
        cup(line.number(), columns, line.cells());
      }
    }
    sheet.trouble().ifPresent(problems::add);
  }

  private void header(long line, List<String> columns) {
    for (String name : columns) {
      if (!COLUMNS.contains(name)) {
        wrong(
            line,
            "expected columns among %s; found %s".formatted(String.join(", ", COLUMNS), name));
      }
    }
    if (columns.stream().distinct().count() < columns.size()) {
      wrong(line, "expected each column once; found one twice");
    }
    if (!columns.contains("cup")) {
      wrong(line, "expected a column cup; found none");
    }
  }

  private void cup(long line, List<String> columns, List<String> cells) {
    ObjectNode cup = EventJson.mapper().createObjectNode();
    for (int i = 0; i < cells.size(); i++) {
      String cell = cells.get(i);
      if (cell.isEmpty()) {
        continue;
      }
      if (i >= columns.size()) {
        wrong(line, "cell %d stands under no column: %s".formatted(i + 1, cell));
      } else if (!YES_COLUMNS.contains(columns.get(i))) {
        cup.put(columns.get(i), cell);
      } else if (YES.contains(cell.toLowerCase(Locale.ROOT))) {
        cup.put(columns.get(i), true);
      } else {
        wrong(line, "%s: expected yes or nothing; found %s".formatted(columns.get(i), cell));
      }
    }
    cups.add(cup);
    try {
      if (columns.stream().allMatch(COLUMNS::contains)) {
        Cup.of(cup);
      }
    } catch (InstructionException e) {
      wrong(line, String.valueOf(e.getMessage()));
    }
  }

  private void wrong(long line, String problem) {
    problems.add("line %d: %s".formatted(line, problem));
  }
}
