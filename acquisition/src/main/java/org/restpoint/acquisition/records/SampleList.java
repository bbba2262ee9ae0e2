package org.restpoint.acquisition.records;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.restpoint.acquisition.sample.Sample;
import org.restpoint.acquisition.sample.SampleException;
import org.restpoint.acquisition.sample.SampleField;
import org.restpoint.acquisition.sample.SampleReader;

/**
 * A list of samples as CSV by RFC 4180: the first line has the names of fields, each line below it
 * is a sample. A list may be separated by semicolons or tabs, where a number may have a decimal
 * comma, and may begin with a byte order mark, as spreadsheets write it. An empty cell tells
 * nothing. A list is read whole or refused with a {@link SampleException} that tells each mistake
 * with its line.
 */
public final class SampleList {

  private final List<Row> rows = new ArrayList<>();
  private final List<String> problems = new ArrayList<>();
  private final Map<String, Long> lines = new LinkedHashMap<>();
  private final Instant now;

  private SampleList(Instant now) {
    this.now = now;
  }

  /**
   * A row of a list.
   *
   * @param line the line of the file where it begins, from 1
   * @param told what it tells of a sample
   */
  public record Row(long line, ObjectNode told) {}

  /** Reads a list; {@code now} is later than every sample was taken. */
  public static List<Row> read(Path file, Instant now) {
    SampleList list = new SampleList(now);
    try {
      list.take(Spreadsheet.read(file));
    } catch (Spreadsheet.NotATableException e) {
      throw new SampleException(List.of(e.problem()));
    }
    if (list.problems.isEmpty() && list.rows.isEmpty()) {
      list.problems.add("expected a line of field names and a line for each sample; found none");
    }
    if (!list.problems.isEmpty()) {
      throw new SampleException(list.problems);
    }
    return list.rows;
  }

  private void take(Spreadsheet sheet) {
    List<String> columns = List.of();
    for (Spreadsheet.Line line : sheet.lines()) {
      if (columns.isEmpty()) {
        columns = line.cells();
        header(line.number(), columns);
      } else {
        row(line.number(), columns, line.cells(), sheet.separator() != ',');
      }
    }
    sheet.trouble().ifPresent(problems::add);
  }

  private void header(long line, List<String> columns) {
    List<String> named = columns.stream().filter(name -> !name.isEmpty()).toList();
    for (String name : named) {
      SampleReader.unknown(name).ifPresent(wrong -> wrong(line, wrong));
    }
    named.stream()
        .distinct()
        .filter(name -> named.indexOf(name) != named.lastIndexOf(name))
        .forEach(name -> wrong(line, "two columns are named " + name));
    if (!named.contains(SampleField.NUMBER.key())) {
      wrong(line, "expected names of fields, number among them; found no column number");
    }
  }

  private void row(long line, List<String> columns, List<String> cells, boolean decimalComma) {
    Map<String, String> told = new LinkedHashMap<>();
    for (int i = 0; i < cells.size(); i++) {
      String name = i < columns.size() ? columns.get(i) : "";
      String cell = cells.get(i);
      if (!cell.isEmpty() && name.isEmpty()) {
        wrong(line, "cell %d stands under no name: %s".formatted(i + 1, cell));
      } else if (!cell.isEmpty() && SampleReader.unknown(name).isEmpty()) {
        told.put(name, decimalComma && SampleField.isNumber(name) ? cell.replace(',', '.') : cell);
      }
    }
    try {
      ObjectNode read = SampleReader.read(told);
      Sample sample = Sample.of(read);
      sample.takenAfter(now).ifPresent(late -> wrong(line, late));
      Long earlier = lines.putIfAbsent(sample.number(), line);
      if (earlier != null) {
        wrong(line, "number: %s stands in line %d as well".formatted(sample.number(), earlier));
      }
      rows.add(new Row(line, read));
    } catch (SampleException e) {
      e.problems().forEach(problem -> wrong(line, problem));
    }
  }

  private void wrong(long line, String problem) {
    problems.add("line %d: %s".formatted(line, problem));
  }
}
