package org.restpoint.acquisition.records;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A table as spreadsheets save it: CSV by RFC 4180 in UTF-8, separated by commas, semicolons or
 * tabs, perhaps with a byte order mark. Cells are stripped, and lines without any cell passed over.
 *
 * @param separator what stands between cells
 * @param lines what was read, the line of column names first
 * @param trouble why it could not be read to its end, where it could not
 */
record Spreadsheet(char separator, List<Line> lines, Optional<String> trouble) {

  /** A list has dozens of rows; a file of megabytes is something else. */
  private static final long MOST_BYTES = 4 << 20;

  private static final char BYTE_ORDER_MARK = '\uFEFF';

  /**
   * A line with something in it.
   *
   * @param number the line of the file where it begins, from 1
   * @param cells its cells, stripped; empty ones too
   */
  record Line(long number, List<String> cells) {}

  /** A file that is no table at all. */
  static final class NotATableException extends Exception {
    private static final long serialVersionUID = 1;

    private NotATableException(String problem) {
      super(problem);
    }

    /** What is wrong, in words for the person. */
    String problem() {
      return String.valueOf(getMessage());
    }
  }

  /** Reads a table. */
  static Spreadsheet read(Path file) throws NotATableException {
    String text = text(file);
    char separator = separator(text);
    List<Line> lines = new ArrayList<>();
    Optional<String> trouble = Optional.empty();
    try (CsvReader<CsvRecord> csv =
        CsvReader.builder()
            .fieldSeparator(separator)
            .skipEmptyLines(true)
            .allowExtraFields(true)
            .allowMissingFields(true)
            .ofCsvRecord(text)) {
      for (CsvRecord row : csv) {
        List<String> cells = row.getFields().stream().map(String::strip).toList();
        if (!cells.stream().allMatch(String::isEmpty)) {
          lines.add(new Line(row.getStartingLineNumber(), cells));
        }
      }
    } catch (CsvParseException e) {
      trouble = Optional.of("the table cannot be read on: " + e.getMessage());
    } catch (IOException e) {
      throw new IllegalStateException("text that was read is not read again", e);
    }
    return new Spreadsheet(separator, List.copyOf(lines), trouble);
  }

  private static String text(Path file) throws NotATableException {
    try {
      if (Files.size(file) > MOST_BYTES) {
        throw new NotATableException("expected a list of at most 4 MiB; found a longer one");
      }
      String text =
          StandardCharsets.UTF_8
              .newDecoder()
              .decode(ByteBuffer.wrap(Files.readAllBytes(file)))
              .toString();
      return !text.isEmpty() && text.charAt(0) == BYTE_ORDER_MARK ? text.substring(1) : text;
    } catch (NoSuchFileException e) {
      throw new NotATableException("it is not there");
    } catch (CharacterCodingException e) {
      throw new NotATableException(
          "it is not text in UTF-8; let the spreadsheet save it as CSV UTF-8");
    } catch (IOException e) {
      throw new NotATableException("it cannot be read: " + e.getMessage());
    }
  }

  /** The one of comma, semicolon and tab that the first line has most of. */
  private static char separator(String text) {
    String header = text.lines().filter(line -> !line.isBlank()).findFirst().orElse("");
    char most = ',';
    for (char candidate : new char[] {';', '\t'}) {
      if (count(header, candidate) > count(header, most)) {
        most = candidate;
      }
    }
    return most;
  }

  private static long count(String text, char wanted) {
    return text.chars().filter(character -> character == wanted).count();
  }
}
