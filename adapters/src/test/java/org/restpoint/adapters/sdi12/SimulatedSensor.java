package org.restpoint.adapters.sdi12;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.UnaryOperator;

/**
 * A sensor of our own making that keeps to the standard, and breaks it where a test says so. Its
 * measurement 1 gives its values in the opposite order, any other than 0 and 1 it does not know.
 */
public final class SimulatedSensor {

  private static final String RELEASE = "1.0";

  private char address;
  private List<Double> values;
  private int seconds;
  private int partSize = 9;
  private boolean silent;
  private boolean aborting;
  private boolean addressIsFixed;
  private Duration delay = Duration.ZERO;
  private Optional<Duration> requestAfter = Optional.empty();
  private UnaryOperator<String> garbling = UnaryOperator.identity();
  private int measurements;

  private List<Double> measured = List.of();
  private boolean checked;
  private boolean concurrent;
  private long readyNanos;
  private boolean measuring;

  SimulatedSensor(char address, double... values) {
    this.address = address;
    this.values = toList(values);
  }

  private static List<Double> toList(double... values) {
    List<Double> list = new ArrayList<>();
    for (double value : values) {
      list.add(value);
    }
    return list;
  }

  /** What it measures from now on. */
  public synchronized void measures(double... now) {
    values = toList(now);
  }

  /** How long a measurement takes. */
  public void takesSeconds(int whole) {
    takes(whole, Optional.empty());
  }

  /** How long a measurement takes, and when a service request says that it is done, if at all. */
  synchronized void takes(int wholeSeconds, Optional<Duration> request) {
    seconds = wholeSeconds;
    requestAfter = request;
  }

  /** How many values it sends in one answer. */
  synchronized void sendsInPartsOf(int size) {
    partSize = size;
  }

  /** Whether it does not answer. */
  synchronized void silent(boolean now) {
    silent = now;
  }

  /** Whether its measurements come to nothing. */
  synchronized void aborts(boolean now) {
    aborting = now;
  }

  /** Its address cannot be changed: it does not know the command. */
  synchronized void fixed() {
    addressIsFixed = true;
  }

  /** How long it lets itself be waited for. */
  synchronized void answersAfter(Duration span) {
    delay = span;
  }

  /** What becomes of its answers on the way, their CR and LF included. */
  synchronized void garbles(UnaryOperator<String> how) {
    garbling = how;
  }

  /** How many measurements it has begun. */
  synchronized int measurements() {
    return measurements;
  }

  synchronized char address() {
    return address;
  }

  synchronized Duration delay() {
    return delay;
  }

  /** The bus was woken by a break: what is not concurrent is given up (section 4.4.5). */
  synchronized void broken(long nanos) {
    if (measuring && !concurrent && nanos - readyNanos < 0) {
      forget();
    }
  }

  /** When the service request comes that the last command brings with it, after its answer. */
  synchronized Optional<Duration> serviceRequest() {
    return measuring && !concurrent && seconds > 0 ? requestAfter : Optional.empty();
  }

  /** Its answer to a command's body; empty where it has none. */
  synchronized Optional<String> answer(String body, long nanos) {
    if (silent) {
      return Optional.empty();
    }
    return obey(body, nanos).map(text -> garbling.apply(text + "\r\n"));
  }

  private Optional<String> obey(String body, long nanos) {
    boolean runs = measuring && nanos - readyNanos < 0;
    if (runs) {
      forget();
    }
    if (body.isEmpty() || body.equals("?")) {
      return Optional.of(String.valueOf(address));
    }
    if (body.equals("I")) {
      return Optional.of(address + "14INVENTEDION-2 " + RELEASE);
    }
    if (body.matches("A[0-9A-Za-z]") && !addressIsFixed) {
      address = body.charAt(1);
      return Optional.of(String.valueOf(address));
    }
    if (body.matches("D\\d")) {
      return Optional.of(withCheck(part(body.charAt(1) - '0')));
    }
    return body.matches("[MCR]C?\\d?") ? measure(body, nanos) : Optional.empty();
  }

  private Optional<String> measure(String body, long nanos) {
    char kind = body.charAt(0);
    char last = body.charAt(body.length() - 1);
    int number = Character.isDigit(last) ? last - '0' : 0;
    List<Double> now = number > 1 ? List.of() : aborting ? List.of() : ordered(number);
    checked = body.startsWith("C", 1);
    concurrent = kind == 'C';
    measured = now;
    measuring = kind != 'R';
    measurements++;
    Duration whole = Duration.ofSeconds(seconds);
    Duration until = requestAfter.filter(early -> early.compareTo(whole) < 0).orElse(whole);
    readyNanos = nanos + until.toNanos();
    if (kind == 'R') {
      return Optional.of(withCheck(part(0)));
    }
    int count = number > 1 ? 0 : values.size();
    return Optional.of(
        String.format(
            Locale.ROOT, concurrent ? "%c%03d%02d" : "%c%03d%d", address, seconds, count));
  }

  private List<Double> ordered(int number) {
    List<Double> now = new ArrayList<>(values);
    if (number == 1) {
      Collections.reverse(now);
    }
    return now;
  }

  private String part(int number) {
    StringBuilder text = new StringBuilder().append(address);
    int from = Math.min(measured.size(), number * partSize);
    int to = Math.min(measured.size(), from + partSize);
    measured.subList(from, to).forEach(v -> text.append(shown(v)));
    return text.toString();
  }

  /** At least two decimals, and no more characters than a value may have. */
  private static String shown(double value) {
    String decimals = Math.abs(value) < 1 ? "%+.4f" : "%+.2f";
    return String.format(Locale.ROOT, decimals, value);
  }

  private String withCheck(String text) {
    return checked ? text + CheckCharacters.of(text) : text;
  }

  private void forget() {
    measured = List.of();
    measuring = false;
  }
}
