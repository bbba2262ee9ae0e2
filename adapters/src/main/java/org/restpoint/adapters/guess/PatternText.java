package org.restpoint.adapters.guess;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.restpoint.adapters.line.DecimalMark;

/**
 * Writes a pattern that reads lines of one layout: what never changes stands in it as it is, the
 * numbers that count in named groups, and what changes otherwise loosely.
 */
final class PatternText {

  private static final String SPECIAL = "\\[](){}.*+?^$|";

  private final Layout layout;
  private final DecimalMark decimal;
  private final Map<Integer, String> groups = new HashMap<>();

  PatternText(Layout layout, DecimalMark decimal, Roles roles) {
    this.layout = layout;
    this.decimal = decimal;
    roles.potential().ifPresent(role -> groups.put(role.place(), role.group()));
    roles.temperature().ifPresent(role -> groups.put(role.place(), role.group()));
    roles.channel().ifPresent(place -> groups.put(place, "channel"));
  }

  /** The pattern of whole lines. */
  String whole() {
    return upTo(layout.columns().size());
  }

  /**
   * The same with anything after the last number that counts and its unit: for lines that end in
   * several ways.
   */
  String openAtTheEnd() {
    int last = groups.keySet().stream().mapToInt(Integer::intValue).max().orElse(0);
    boolean unit =
        last + 1 < layout.columns().size()
            && layout.columns().get(last + 1).kind() == Token.Kind.WORD
            && layout.columns().get(last + 1).isConstant();
    return upTo(unit ? last + 2 : last + 1) + "(?:[^-+.,\\d].*)?";
  }

  private String upTo(int end) {
    StringBuilder pattern = new StringBuilder();
    for (int place = 0; place < end; place++) {
      Column column = layout.columns().get(place);
      pattern.append(place == 0 ? "" : gap(column));
      String group = groups.get(place);
      if (group != null) {
        pattern.append("(?<%s>%s)".formatted(group, loose(column, group.equals("channel"))));
      } else {
        pattern.append(stays(place) ? literal(column.text()) : loose(column, false));
      }
    }
    return pattern.toString();
  }

  private static String gap(Column column) {
    Set<String> gaps = new HashSet<>();
    column.tokens().forEach(token -> gaps.add(token.gap()));
    if (gaps.equals(Set.of(""))) {
      return "";
    }
    if (gaps.equals(Set.of(" "))) {
      return " ";
    }
    boolean blanks = gaps.stream().allMatch(gap -> gap.chars().allMatch(c -> c == ' '));
    return (blanks ? " " : "\\s") + (gaps.contains("") ? "*" : "+");
  }

  /**
   * Whether what stood at a place in all lines will stand there in others: words, characters, and
   * of numbers only whole ones that begin the line or belong to a word, as in {@code M1}.
   */
  private boolean stays(int place) {
    Column column = layout.columns().get(place);
    if (!column.isConstant() || column.kind() == Token.Kind.STAMP) {
      return false;
    }
    boolean glued =
        column.tokens().get(0).gap().isEmpty()
            && (place < 2 || layout.columns().get(place - 1).kind() == Token.Kind.WORD);
    return !column.isNumber() || (glued && column.text().matches("\\d+"));
  }

  private String loose(Column column, boolean channel) {
    List<Token> tokens = column.tokens();
    return switch (column.kind()) {
      case NUMBER -> channel ? "\\d+" : number(tokens);
      case WORD ->
          tokens.stream().allMatch(token -> token.text().matches("\\w+")) ? "\\w+" : "\\S+";
      case STAMP -> "[-+:./,TZ\\d]+";
      case MARK -> "\\S";
    };
  }

  private String number(List<Token> tokens) {
    String mark = decimal == DecimalMark.COMMA ? "," : ".";
    boolean apart = tokens.stream().anyMatch(token -> token.text().indexOf(' ') >= 0);
    boolean power = tokens.stream().anyMatch(token -> token.text().matches(".*[eE].*"));
    return (apart ? "[-+]? *" : "")
        + "[%s%s\\d%s]+".formatted(apart && !power ? "" : "-+", mark, power ? "eE" : "");
  }

  /** Text that means itself in a pattern; what is not ASCII is any one character. */
  static String literal(String text) {
    StringBuilder literal = new StringBuilder();
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c < ' ' || c == 0x7F) {
        literal.append("\\x%02X".formatted((int) c));
      } else if (c < 0x7F) {
        literal.append(SPECIAL.indexOf(c) >= 0 ? "\\" : "").append(c);
      } else {
        literal.append('.');
      }
    }
    return literal.toString();
  }
}
