package org.restpoint.adapters.guess;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.restpoint.adapters.guess.Token.Kind;
import org.restpoint.adapters.line.DecimalMark;
import org.restpoint.adapters.quantity.Meaning;
import org.restpoint.adapters.quantity.PotentialScale;
import org.restpoint.adapters.quantity.TemperatureScale;

/**
 * Which of named numbers are the potential and the temperature: judged as the numbers of a line
 * that has {@code name=number unit} for each of them.
 *
 * @param potential the field of the potential, if there is one
 * @param temperature the field of the temperature, if there is one
 * @param meaning what the two mean
 * @param doubts what a person should look at, each a clause without a full stop
 */
public record FieldGuess(
    Optional<Field> potential, Optional<Field> temperature, Meaning meaning, List<String> doubts) {

  public FieldGuess {
    doubts = List.copyOf(doubts);
  }

  /** The likeliest fields; empty where none can be a potential or a temperature. */
  public static Optional<FieldGuess> of(List<Field> fields) {
    List<Column> columns = new ArrayList<>();
    Map<Integer, Field> places = new TreeMap<>();
    for (Field field : fields) {
      columns.add(always(Kind.WORD, telling(field)));
      columns.add(always(Kind.MARK, "="));
      places.put(columns.size(), field);
      columns.add(Column.of(numbers(field), DecimalMark.POINT));
      field.unit().ifPresent(unit -> columns.add(always(Kind.WORD, unit)));
      columns.add(always(Kind.MARK, "&"));
    }
    Layout layout = new Layout(columns, 1);
    Roles roles =
        Roles.of(
            layout,
            Optional.empty(),
            place ->
                "%s (%s)"
                    .formatted(
                        Optional.ofNullable(places.get(place)).map(Field::key).orElse(""),
                        columns.get(place).shown()));
    Optional<PotentialScale> potential =
        roles.potential().map(role -> Scales.potential(role.group(), columns.get(role.place())));
    Optional<TemperatureScale> temperature =
        roles
            .temperature()
            .flatMap(role -> Scales.temperature(role.group(), columns.get(role.place())));
    if (potential.isEmpty() && temperature.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new FieldGuess(
            roles.potential().map(role -> places.get(role.place())),
            roles
                .temperature()
                .filter(role -> temperature.isPresent())
                .map(role -> places.get(role.place())),
            new Meaning(potential, temperature),
            roles.doubts()));
  }

  private static Column always(Kind kind, String text) {
    return Column.of(List.of(new Token(kind, "", text)), DecimalMark.POINT);
  }

  private static List<Token> numbers(Field field) {
    return field.values().stream().map(value -> new Token(Kind.NUMBER, " ", value)).toList();
  }

  /** The word of its name that says most: a unit, or else what names a quantity. */
  private static String telling(Field field) {
    List<String> words = field.words();
    List<String> last = words.subList(words.size() - 1, words.size());
    return said(last, true)
        .filter(word -> words.size() > 1)
        .or(() -> said(words, false))
        .orElse(field.name());
  }

  private static Optional<String> said(List<String> words, boolean unit) {
    return words.stream()
        .filter(word -> (unit ? Quantity.ofUnit(word) : Quantity.ofLabel(word)).isPresent())
        .findFirst();
  }
}
