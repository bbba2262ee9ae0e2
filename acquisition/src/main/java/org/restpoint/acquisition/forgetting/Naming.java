package org.restpoint.acquisition.forgetting;

import java.util.Collection;
import java.util.List;
import java.util.regex.Pattern;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.acquisition.event.SampleRecord;

/**
 * Finds out whether JSON of ours names a sample: by its number where one stands, by words like
 * {@code sample S-1}, or by the id of one of its results. A number alone is not looked for: sample
 * 7 is not every 7.
 */
final class Naming {

  /**
   * After a number or an id that goes on here, another one is meant: S-1 is not S-1-b, nor S-12.
   */
  private static final String ENDS = "(?![\\p{L}\\p{N}]|[-_./:][\\p{L}\\p{N}])";

  private static final String BEGINS = "(?<![\\p{L}\\p{N}]|[\\p{L}\\p{N}][-_./:])";

  private final String escaped;
  private final Pattern pattern;

  /**
   * A finder.
   *
   * @param number the sample's number
   * @param results the ids of its results
   */
  Naming(String number, Collection<String> results) {
    this.escaped = escaped(number);
    String quoted = Pattern.quote(escaped);
    StringBuilder all =
        new StringBuilder("\"(number|sample|duplicate|spike)\":\"%s\"".formatted(quoted))
            .append("|\"%s\"".formatted(Pattern.quote(escaped(SampleRecord.idOf(number)))))
            .append("|(?i:sample)[ =]%s%s".formatted(quoted, ENDS));
    for (String id : results) {
      all.append('|').append(BEGINS).append(Pattern.quote(id)).append(ENDS);
    }
    this.pattern = Pattern.compile(all.toString());
  }

  /** Whether the JSON names it. */
  boolean isIn(String json) {
    return pattern.matcher(json).find();
  }

  /** Whether the JSON has the number in it, of whatever it is. */
  boolean mayBeIn(String json) {
    return json.contains(escaped);
  }

  /** A text as it stands in JSON, between its quotes. */
  static String escaped(String text) {
    String json = EventJson.write(text);
    return json.substring(1, json.length() - 1);
  }

  /** Whether one of some texts stands in the JSON. */
  static boolean has(String json, List<String> escapedTexts) {
    return escapedTexts.stream().anyMatch(json::contains);
  }
}
