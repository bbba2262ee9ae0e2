package org.restpoint.acquisition.workday;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/** The day's tables, as they stand beside the tests; what begins with # is for the reader. */
final class Table {

  private Table() {}

  /** A file of the day. */
  static String text(String file) {
    try (InputStream in =
        Objects.requireNonNull(Table.class.getResourceAsStream("/workday/" + file))) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * A row of a table.
   *
   * @param cells by the names of their columns, in order
   */
  record Row(Map<String, String> cells) {

    String cell(String column) {
      return Objects.requireNonNull(cells.get(column), column);
    }
  }

  /** The rows of a table. */
  static List<Row> rows(String file) {
    List<String> lines = text(file).lines().filter(line -> !line.startsWith("#")).toList();
    String[] names = lines.get(0).split(",", -1);
    return lines.stream().skip(1).map(line -> row(names, line.split(",", -1))).toList();
  }

  private static Row row(String[] names, String[] cells) {
    Map<String, String> row = new LinkedHashMap<>();
    for (int i = 0; i < names.length; i++) {
      row.put(names[i], cells[i]);
    }
    return new Row(row);
  }
}
