package org.restpoint.adapters.sdi12;

import org.restpoint.adapters.sdi12.Answer.Malformed;
import org.restpoint.adapters.sdi12.Answer.Understood;
import org.restpoint.adapters.text.Excerpt;

/**
 * What a sensor says of itself (section 4.4.2, Table 7): {@code allccccccccmmmmmmvvvxxx}. Spaces
 * that fill a field up are left out.
 *
 * @param version of SDI-12 that it keeps to, such as {@code 1.4}
 * @param maker at most 8 characters
 * @param model at most 6 characters
 * @param release of the sensor, at most 3 characters
 * @param more a serial number or whatever the maker has to say, at most 13 characters
 */
public record Identification(
    String version, String maker, String model, String release, String more) {

  private static final int FEWEST = 20;
  private static final int MOST = FEWEST + 13;

  /** What a line that begins with the sensor's address says. */
  static Answer<Identification> read(String line) {
    if (line.length() < FEWEST
        || line.length() > MOST
        || !line.chars().allMatch(c -> c >= ' ' && c <= '~')
        || !line.substring(1, 3).chars().allMatch(c -> c >= '0' && c <= '9')) {
      return new Malformed<>(
          ("\"%s\" is no identification: two digits and 17 to 30 printable characters follow the"
                  + " address")
              .formatted(Excerpt.of(line)));
    }
    return new Understood<>(
        new Identification(
            line.charAt(1) + "." + line.charAt(2),
            line.substring(3, 11).strip(),
            line.substring(11, 17).strip(),
            line.substring(17, FEWEST).strip(),
            line.substring(FEWEST).strip()));
  }
}
