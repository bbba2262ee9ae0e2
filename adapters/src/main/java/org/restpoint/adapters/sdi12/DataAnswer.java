package org.restpoint.adapters.sdi12;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.restpoint.adapters.sdi12.Answer.Malformed;
import org.restpoint.adapters.sdi12.Answer.Understood;
import org.restpoint.adapters.text.Excerpt;

/**
 * The values in an answer to {@code aD0!} or {@code aR0!} (section 4.4.8, Table 11). Each begins
 * with its sign, has one to seven digits and at most one decimal point, and the next follows at
 * once.
 */
final class DataAnswer {

  private static final int MOST_DIGITS = 7;
  private static final Pattern VALUE = Pattern.compile("[-+](\\d*)(?:\\.(\\d*))?");

  private DataAnswer() {}

  /**
   * The values of a line that begins with the sensor's address; none of an answer that is the
   * address alone (section 4.4.8.1).
   */
  static Answer<List<Double>> read(String line, Measurement measurement) {
    if (line.length() == 1) {
      return new Understood<>(List.of());
    }
    Answer<String> whole =
        measurement.checked() ? CheckCharacters.checked(line) : new Understood<>(line);
    return whole.then(text -> values(text, measurement.kind().mostCharacters()));
  }

  private static Answer<List<Double>> values(String text, int most) {
    if (text.length() - 1 > most) {
      return new Malformed<>(
          "\"%s\" has %d characters of values, %d at most"
              .formatted(Excerpt.of(text), text.length() - 1, most));
    }
    List<Double> values = new ArrayList<>();
    Matcher value = VALUE.matcher(text);
    int end = 1;
    while (end < text.length()) {
      if (!value.find(end) || value.start() != end || !hasDigits(value)) {
        return new Malformed<>(
            "\"%s\" has no value at character %d: a sign and one to seven digits"
                .formatted(Excerpt.of(text), end + 1));
      }
      values.add(Double.valueOf(value.group()));
      end = value.end();
    }
    return new Understood<>(List.copyOf(values));
  }

  private static boolean hasDigits(Matcher value) {
    String after = value.group(2);
    int digits = value.group(1).length() + (after == null ? 0 : after.length());
    return digits > 0 && digits <= MOST_DIGITS;
  }
}
