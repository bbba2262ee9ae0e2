package org.restpoint.adapters.recording;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.temporal.ChronoUnit;

/**
 * Reads the time of a row: ISO 8601 in UTC ({@code 2026-04-02T14:03:00.250Z}), or seconds from a
 * zero ({@code 12.25}, without exponent). Both are rounded to the nearest millisecond, a half to
 * the even one.
 */
final class TimeField implements TimeText {

  /** What a time is written as. */
  enum Form {
    ISO,
    SECONDS
  }

  /** Eleven digits of seconds are three thousand years. */
  private static final int WHOLE_DIGITS = 11;

  private static final int SHORTEST_ISO = "2026-04-02T14:03:00Z".length();

  private final long zeroMillis;
  private Form form = Form.ISO;
  private long epochMillis;
  private int yearAndMonth = -1;
  private long firstOfMonth;
  private int daysInMonth;

  /** Seconds are counted from this instant, a whole millisecond. */
  TimeField(Instant zero) {
    if (!zero.equals(zero.truncatedTo(ChronoUnit.MILLIS))) {
      throw new IllegalArgumentException("the zero of a recording is finer than a millisecond");
    }
    this.zeroMillis = zero.toEpochMilli();
  }

  Form form() {
    return form;
  }

  @Override
  public long epochMillis() {
    return epochMillis;
  }

  @Override
  public long laterMillis() {
    return epochMillis;
  }

  @Override
  public Skip skip() {
    return Skip.TIME;
  }

  @Override
  public String fault() {
    return "is neither ISO 8601 in UTC (2026-04-02T14:03:00.250Z) nor seconds (12.25)";
  }

  @Override
  public boolean read(char[] text, int from, int to) {
    if (to > from && (text[to - 1] == 'Z' || text[to - 1] == 'z')) {
      form = Form.ISO;
      return readIso(text, from, to) || readIsoSlowly(text, from, to);
    }
    form = Form.SECONDS;
    return readSeconds(text, from, to, '.');
  }

  private boolean readIso(char[] text, int from, int to) {
    if (to - from < SHORTEST_ISO
        || text[from + 4] != '-'
        || text[from + 7] != '-'
        || text[from + 10] != 'T'
        || text[from + 13] != ':'
        || text[from + 16] != ':'
        || text[to - 1] != 'Z') {
      return false;
    }
    int year = number(text, from, from + 4);
    int month = number(text, from + 5, from + 7);
    int day = number(text, from + 8, from + 10);
    int hour = number(text, from + 11, from + 13);
    int minute = number(text, from + 14, from + 16);
    int second = number(text, from + 17, from + 19);
    if (year < 0 || month < 1 || month > 12 || hour < 0 || hour > 23) {
      return false;
    }
    turnTo(year, month);
    if (day < 1 || day > daysInMonth || minute < 0 || minute > 59 || second < 0 || second > 59) {
      return false;
    }
    int millis = 0;
    if (text[from + 19] == '.') {
      int digits = to - 1 - (from + 20);
      int fraction = digits >= 1 && digits <= 9 ? number(text, from + 20, to - 1) : -1;
      if (fraction < 0) {
        return false;
      }
      for (int i = digits; i < 9; i++) {
        fraction *= 10;
      }
      millis = roundedToMillis(fraction);
    } else if (to - from != SHORTEST_ISO) {
      return false;
    }
    long days = firstOfMonth + day - 1;
    epochMillis = ((days * 24 + hour) * 60 + minute) * 60_000 + second * 1_000L + millis;
    return true;
  }

  /** Looks the month up when it is another than the last one. */
  private void turnTo(int year, int month) {
    int asked = year * 12 + month;
    if (asked != yearAndMonth) {
      yearAndMonth = asked;
      firstOfMonth = LocalDate.of(year, month, 1).toEpochDay();
      daysInMonth = YearMonth.of(year, month).lengthOfMonth();
    }
  }

  /** What is ISO 8601 and rare: a leap second, the end of a day as 24:00, years beyond 9999. */
  private boolean readIsoSlowly(char[] text, int from, int to) {
    try {
      Instant instant = Instant.parse(new String(text, from, to - from));
      epochMillis =
          Math.addExact(
              Math.multiplyExact(instant.getEpochSecond(), 1_000L),
              roundedToMillis(instant.getNano()));
      return true;
    } catch (DateTimeException | ArithmeticException e) {
      // Not a time, or one that no clock shows; the caller is told.
      return false;
    }
  }

  /** Reads seconds from the zero, with this character before their decimals. */
  boolean readSeconds(char[] text, int from, int to, char decimalMark) {
    int at = from;
    boolean negative = at < to && text[at] == '-';
    if (at < to && (text[at] == '-' || text[at] == '+')) {
      at++;
    }
    int start = at;
    long millis = 0;
    while (at < to && isDigit(text[at]) && at - start < WHOLE_DIGITS) {
      millis = millis * 10 + (text[at++] - '0');
    }
    int seen = at - start;
    for (int i = 0; i < 3; i++) {
      millis *= 10;
    }
    if (at < to && text[at] == decimalMark) {
      int first = ++at;
      int weight = 100;
      boolean beyondHalf = false;
      int tenth = 0;
      for (; at < to && isDigit(text[at]); at++) {
        int digit = text[at] - '0';
        if (weight > 0) {
          millis += (long) digit * weight;
          weight /= 10;
        } else if (at == first + 3) {
          tenth = digit;
        } else {
          beyondHalf |= digit > 0;
        }
      }
      seen += at - first;
      if (tenth > 5 || (tenth == 5 && (beyondHalf || (millis & 1) == 1))) {
        millis++;
      }
    }
    epochMillis = zeroMillis + (negative ? -millis : millis);
    return seen > 0 && at == to;
  }

  /** Nanoseconds of a second as milliseconds, a half to the even one. */
  static int roundedToMillis(int nanos) {
    int millis = nanos / 1_000_000;
    int rest = nanos % 1_000_000;
    return rest > 500_000 || (rest == 500_000 && (millis & 1) == 1) ? millis + 1 : millis;
  }

  /** The digits as a number; −1 when one of them is no digit. */
  private static int number(char[] text, int from, int to) {
    int number = 0;
    for (int i = from; i < to; i++) {
      if (!isDigit(text[i])) {
        return -1;
      }
      number = number * 10 + (text[i] - '0');
    }
    return number;
  }

  private static boolean isDigit(char c) {
    return c >= '0' && c <= '9';
  }
}
