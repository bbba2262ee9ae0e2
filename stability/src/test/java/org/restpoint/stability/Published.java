package org.restpoint.stability;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/**
 * A table of published values, whose first lines ({@code #}) are its citation.
 *
 * @param columns the columns' names
 * @param rows the values, in the file's order
 */
public record Published(List<String> columns, List<List<String>> rows) {

  /** The table of that name. */
  public static Published table(String name) {
    try (InputStream stream = Published.class.getResourceAsStream("/published/" + name + ".csv")) {
      if (stream == null) {
        throw new IllegalArgumentException("no published table " + name);
      }
      List<String> lines =
          new String(stream.readAllBytes(), StandardCharsets.UTF_8).lines().toList();
      if (!lines.get(0).startsWith("# ")) {
        throw new IllegalArgumentException("the table " + name + " does not say its source");
      }
      List<List<String>> cells =
          lines.stream()
              .filter(line -> !line.startsWith("#"))
              .map(line -> List.of(line.split(",")))
              .toList();
      return new Published(cells.get(0), cells.subList(1, cells.size()));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** A column as numbers. */
  public double[] numbers(String column) {
    return texts(column).stream().mapToDouble(Double::parseDouble).toArray();
  }

  /** A column as it is written. */
  public List<String> texts(String column) {
    int index = columns.indexOf(column);
    if (index < 0) {
      throw new IllegalArgumentException("no column " + column + " in " + columns);
    }
    return rows.stream().map(row -> row.get(index)).toList();
  }
}
