package org.restpoint.adapters.guess;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Finds the place that says whose a line is: a few whole numbers or words without a unit that take
 * turns, and either a word that says so stands before it, or by it some number of the line falls
 * into groups, each of them narrow beside the whole.
 */
final class ChannelGuess {

  private static final Set<String> NAMES =
      Set.of("ch", "chan", "channel", "probe", "input", "sensor", "port", "addr", "id", "no", "m");

  private static final int MOST = 8;
  private static final int LONGEST = 12;

  /** A group that spans more of the whole than this may be the same electrode. */
  private static final double NARROW = 0.34;

  private ChannelGuess() {}

  static Optional<Integer> of(Layout layout) {
    Labels labels = new Labels(layout);
    List<Column> columns = layout.columns();
    for (int place = 0; place < columns.size(); place++) {
      if (canBe(columns.get(place))
          && takesTurns(columns.get(place).tokens())
          && (!columns.get(place).isNumber() || labels.unit(place).isEmpty())
          && (isNamed(labels, place) || divides(layout, place))) {
        return Optional.of(place);
      }
    }
    return Optional.empty();
  }

  private static boolean canBe(Column column) {
    return (column.kind() == Token.Kind.WORD || (column.isNumber() && !column.hasDecimals()))
        && column.tokens().stream()
            .allMatch(token -> token.text().length() <= LONGEST && !token.text().matches("[-+].*"));
  }

  /** Two to eight texts, each at least twice, that change at least every third time. */
  private static boolean takesTurns(List<Token> tokens) {
    Map<String, Integer> texts = new HashMap<>();
    int turns = 0;
    for (int i = 0; i < tokens.size(); i++) {
      texts.merge(tokens.get(i).text(), 1, Integer::sum);
      turns += i > 0 && !tokens.get(i).text().equals(tokens.get(i - 1).text()) ? 1 : 0;
    }
    return texts.size() >= 2
        && texts.size() <= MOST
        && texts.values().stream().allMatch(count -> count >= 2)
        && 3 * turns >= tokens.size();
  }

  private static boolean isNamed(Labels labels, int place) {
    return labels
        .wordBefore(place)
        .map(word -> NAMES.contains(word.toLowerCase(Locale.ROOT)))
        .orElse(false);
  }

  private static boolean divides(Layout layout, int place) {
    List<Token> channels = layout.columns().get(place).tokens();
    return layout.numbers().stream()
        .filter(number -> number != place)
        .map(number -> layout.columns().get(number))
        .anyMatch(column -> isDivided(column, channels));
  }

  private static boolean isDivided(Column column, List<Token> channels) {
    Map<String, double[]> spans = new HashMap<>();
    for (int i = 0; i < channels.size(); i++) {
      double value = column.numbers().get(i);
      double[] span =
          spans.computeIfAbsent(channels.get(i).text(), text -> new double[] {value, value});
      span[0] = Math.min(span[0], value);
      span[1] = Math.max(span[1], value);
    }
    double whole = column.most() - column.least();
    return whole > 0
        && spans.values().stream().allMatch(span -> span[1] - span[0] <= NARROW * whole);
  }
}
