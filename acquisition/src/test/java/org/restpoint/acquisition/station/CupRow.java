package org.restpoint.acquisition.station;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import org.restpoint.acquisition.event.BatchSummary;
import org.restpoint.acquisition.event.EventJson;

/**
 * A row of the table of the scripted rig.
 *
 * @param cup the cup's name
 * @param key what it holds, as the list has it
 * @param name of what
 * @param milligramsPerLitre what is in it
 * @param fault what goes wrong there; blank for nothing
 * @param outcome what has to come of it
 * @param value the number that has to come of it; blank for none
 * @param tries how often it is read
 * @param skipped whether the batch goes on without it
 * @param flags its flags
 */
record CupRow(
    String cup,
    String key,
    String name,
    double milligramsPerLitre,
    String fault,
    String outcome,
    String value,
    int tries,
    boolean skipped,
    List<String> flags) {

  static List<CupRow> all() {
    try (InputStream in =
        Objects.requireNonNull(CupRow.class.getResourceAsStream("/rig/cups.csv"))) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .filter(line -> !line.startsWith("#") && !line.startsWith("cup,"))
          .map(CupRow::of)
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static CupRow of(String line) {
    String[] cells = line.split(",", -1);
    return new CupRow(
        cells[0],
        cells[1],
        cells[2],
        Double.parseDouble(cells[3]),
        cells[4],
        cells[5],
        cells[6],
        Integer.parseInt(cells[7]),
        cells[8].equals("yes"),
        cells[9].isEmpty() ? List.of() : List.of(cells[9].split(" ")));
  }

  /** Its line in the list of the batch. */
  String line() {
    return "{'cup':'%s','%s':'%s'}".formatted(cup, key, name);
  }

  /** What came of a cup, as this table writes it; a number within 1 % is the number. */
  static String words(BatchSummary.Cup cup, CupRow expected) {
    String outcome = EventJson.mapper().valueToTree(cup.outcome()).asText();
    String value =
        cup.reported()
            .map(
                found ->
                    !expected.value().isEmpty()
                            && Math.abs(found.value() / Double.parseDouble(expected.value()) - 1)
                                < 0.01
                        ? expected.value()
                        : String.valueOf(found.value()))
            .orElse("");
    List<String> flags = cup.flags().stream().filter(flag -> !flag.equals("creeping")).toList();
    return "%s %s value %s tries %d skipped %s %s"
        .formatted(cup.cup(), outcome, value, cup.tries(), cup.skipped(), flags);
  }

  String words() {
    return "%s %s value %s tries %d skipped %s %s"
        .formatted(cup, outcome, value, tries, skipped, flags);
  }
}
