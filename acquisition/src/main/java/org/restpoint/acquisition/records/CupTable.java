package org.restpoint.acquisition.records;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.nio.charset.MalformedInputException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
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
 * a row for each cup, also with semicolons, and with a byte order mark, as spreadsheets write it.
 * An empty cell is a key that is left out. All mistakes are told at once, each with its line.
 */
public final class CupTable {

  /** The columns that a list may have. */
  public static final List<String> COLUMNS =
      List.of(
          "cup", "standard", "sample", "check", "blank", "duplicate", "spike", "rinse", "recipe");

  /** Columns whose cells say yes. */
  private static final Set<String> YES_COLUMNS = Set.of("blank", "rinse");

  private static final Set<String> YES = Set.of("true", "yes", "x", "1");

  /** Five hundred cups take a hundredth of it. */
  private static final long MOST_BYTES = 4 << 20;

  private static final String BYTE_ORDER_MARK = "\uFEFF";

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
    String text = text(file);
    CupTable table = new CupTable();
    String header = text.lines().findFirst().orElse("");
    char separator = header.contains(";") && !header.contains(",") ? ';' : ',';
    try (CsvReader<CsvRecord> rows =
        CsvReader.builder()
            .fieldSeparator(separator)
            .skipEmptyLines(true)
            .allowExtraFields(true)
            .allowMissingFields(true)
            .ofCsvRecord(text)) {
      table.take(rows);
    } catch (CsvParseException e) {
      table.problems.add("the table cannot be read on: " + e.getMessage());
    } catch (IOException e) {
      throw new IllegalStateException("text that was read is not read again", e);
    }
    if (table.problems.isEmpty() && table.cups.isEmpty()) {
      table.problems.add("expected a line of column names and a line for each cup; found none");
    }
    if (!table.problems.isEmpty()) {
      throw new InstructionException(String.join("\n", table.problems));
    }
    return table.cups;
  }

  private void take(CsvReader<CsvRecord> rows) {
    List<String> columns = List.of();
    for (CsvRecord row : rows) {
      List<String> cells = row.getFields().stream().map(String::strip).toList();
      if (cells.stream().allMatch(String::isEmpty)) {
        continue;
      }
      long line = row.getStartingLineNumber();
      if (columns.isEmpty()) {
        columns = cells.stream().map(name -> name.toLowerCase(Locale.ROOT)).toList();
        header(line, columns);
      } else {
        cup(line, columns, cells);
      }
    }
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

  private static String text(Path file) {
    try {
      if (Files.size(file) > MOST_BYTES) {
        throw new InstructionException("expected a list of at most 4 MiB; found a longer one");
      }
      String text = Files.readString(file);
      return text.startsWith(BYTE_ORDER_MARK) ? text.substring(1) : text;
    } catch (NoSuchFileException e) {
      throw new InstructionException("it is not there");
    } catch (MalformedInputException e) {
      throw new InstructionException(
          "it is not text in UTF-8; let the spreadsheet save it as CSV UTF-8");
    } catch (IOException e) {
      throw new InstructionException("it cannot be read: " + e.getMessage());
    }
  }
}
