package org.restpoint.adapters.guess;

import java.util.List;
import java.util.Optional;

/**
 * What the words of a line say about its numbers.
 *
 * <p>A unit stands after its number, straight or after one separator, and is not itself the name of
 * the next number, as {@code C} is in {@code 12.3 C=25}. A name stands before it, with or without
 * {@code =} or {@code :}. Where the line begins with a unit and does not end in one, the units are
 * the names: {@code mV 12.3 C 25.1}.
 */
final class Labels {

  private static final String SEPARATORS = ",;|/([{'*^";
  private static final String BINDERS = "=:([{";

  private final List<Column> columns;
  private final boolean unitsFirst;

  Labels(Layout layout) {
    this.columns = layout.columns();
    List<Integer> numbers = layout.numbers();
    this.unitsFirst =
        !numbers.isEmpty()
            && unitBefore(numbers.get(0), true).isPresent()
            && unitAfter(numbers.get(numbers.size() - 1)).isEmpty();
  }

  /** The unit of the number at a place. */
  Optional<Quantity> unit(int place) {
    return unitsFirst ? unitBefore(place, true) : unitAfter(place);
  }

  private Optional<Quantity> unitBefore(int place, boolean unitsFirst) {
    Optional<String> word = wordBefore(place, unitsFirst);
    return word.flatMap(Quantity::ofUnit)
        .filter(unit -> unit != Quantity.OTHER && name(word, place).equals(Optional.of(unit)));
  }

  /** The name of the number at a place. */
  Optional<Quantity> name(int place) {
    return name(wordBefore(place), place);
  }

  private Optional<Quantity> name(Optional<String> word, int place) {
    Optional<Quantity> name = word.flatMap(Quantity::ofLabel);
    // C is a count without decimals and a temperature with them.
    boolean temperature =
        name.equals(Optional.of(Quantity.RAW)) && columns.get(place).hasDecimals();
    return temperature ? word.flatMap(Quantity::ofUnit) : name;
  }

  /** Whether the number at a place is a part of the next one's name, as the 1 in {@code T1=25}. */
  boolean isPartOfName(int place) {
    return place > 0
        && columns.get(place - 1).kind() == Token.Kind.WORD
        && columns.get(place).tokens().get(0).gap().isEmpty()
        && isMark(place + 1, "=:");
  }

  /** The word that names the number at a place, whatever it says. */
  Optional<String> wordBefore(int place) {
    return wordBefore(place, unitsFirst);
  }

  private Optional<String> wordBefore(int place, boolean unitsFirst) {
    int at = place - 1;
    boolean bound = isMark(at, BINDERS);
    if (bound) {
      at--;
      at -= at > 0 && columns.get(at).isNumber() && isPartOfName(at) ? 1 : 0;
    }
    boolean word =
        at >= 0 && columns.get(at).kind() == Token.Kind.WORD && columns.get(at).isConstant();
    boolean unitOfTheLast =
        !bound && !unitsFirst && at > 0 && columns.get(at - 1).isNumber() && isUnit(at);
    return word && !unitOfTheLast ? Optional.of(columns.get(at).text()) : Optional.empty();
  }

  private Optional<Quantity> unitAfter(int place) {
    int at = isMark(place + 1, SEPARATORS) ? place + 2 : place + 1;
    return at < columns.size() && isUnit(at) && !isMark(at + 1, "=:")
        ? Quantity.ofUnit(columns.get(at).text())
        : Optional.empty();
  }

  private boolean isUnit(int at) {
    Column column = columns.get(at);
    return column.kind() == Token.Kind.WORD
        && column.isConstant()
        && Quantity.ofUnit(column.text()).isPresent();
  }

  private boolean isMark(int at, String marks) {
    return at >= 0
        && at < columns.size()
        && columns.get(at).kind() == Token.Kind.MARK
        && marks.contains(columns.get(at).text());
  }
}
