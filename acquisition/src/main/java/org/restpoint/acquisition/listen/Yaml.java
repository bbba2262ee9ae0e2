package org.restpoint.acquisition.listen;

import java.math.BigDecimal;

/** Values as they are written in a station file. */
final class Yaml {

  private Yaml() {}

  /** A text that stays as it is; in single quotes where YAML would take it for something else. */
  static String text(String text) {
    return text.matches("[A-Za-z/][\\w/.+-]*") && !text.matches("(?i)true|false|yes|no|on|off|null")
        ? text
        : single(text);
  }

  /** In single quotes, in which nothing but a single quote is special. */
  static String single(String text) {
    return "'" + text.replace("'", "''") + "'";
  }

  /** In double quotes, with all but printable ASCII as escapes. */
  static String escaped(String text) {
    StringBuilder escaped = new StringBuilder("\"");
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      switch (c) {
        case '\r' -> escaped.append("\\r");
        case '\n' -> escaped.append("\\n");
        case '\t' -> escaped.append("\\t");
        case '"', '\\' -> escaped.append('\\').append(c);
        default -> escaped.append(c >= ' ' && c <= '~' ? String.valueOf(c) : code(c));
      }
    }
    return escaped.append('"').toString();
  }

  private static String code(char c) {
    return (c <= 0xFF ? "\\x%02X" : "\\u%04X").formatted((int) c);
  }

  /** A number with all its digits and no exponent. */
  static String number(double value) {
    BigDecimal number = BigDecimal.valueOf(value).stripTrailingZeros();
    return number.signum() == 0 ? "0" : number.toPlainString();
  }
}
