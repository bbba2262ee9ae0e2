package org.restpoint.adapters.guess;

import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.restpoint.adapters.line.DecimalMark;

/**
 * Tells a decimal comma from a comma between numbers.
 *
 * <ul>
 *   <li>Where points stand between digits, they are the decimal mark and commas are not.
 *   <li>Commas are decimal where no two of them follow on each other with digits between ({@code
 *       1,2,3} is a list) and where each place has the same number of digits after it in all lines.
 *   <li>Dates and times of day do not count.
 * </ul>
 */
final class DecimalGuess {

  private static final Pattern POINT = Pattern.compile("\\d\\.\\d");
  private static final Pattern COMMA = Pattern.compile("\\d,(\\d+)");
  private static final Pattern LIST = Pattern.compile("\\d,[-+]?\\d+(?:\\.\\d+)?,[-+]?\\d");
  private static final int MOST_DECIMALS = 6;

  private DecimalGuess() {}

  static DecimalMark of(List<String> lines) {
    List<String> bare = lines.stream().map(Tokens::withoutStamps).toList();
    long points = bare.stream().filter(line -> POINT.matcher(line).find()).count();
    boolean comma =
        2 * points < lines.size()
            && bare.stream().noneMatch(line -> LIST.matcher(line).find())
            && bare.stream().map(DecimalGuess::decimals).distinct().count() == 1
            && !decimals(bare.get(0)).isEmpty();
    return comma ? DecimalMark.COMMA : DecimalMark.POINT;
  }

  /** How many digits follow each comma, as text; empty where there is none or they are too many. */
  private static String decimals(String line) {
    StringBuilder found = new StringBuilder();
    Matcher matcher = COMMA.matcher(line);
    while (matcher.find()) {
      if (matcher.group(1).length() > MOST_DECIMALS) {
        return "";
      }
      found.append(matcher.group(1).length()).append(' ');
    }
    return found.toString();
  }
}
