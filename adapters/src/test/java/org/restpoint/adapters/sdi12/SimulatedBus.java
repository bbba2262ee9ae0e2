package org.restpoint.adapters.sdi12;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.PriorityQueue;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.LongSupplier;

/**
 * A converter of our own making with its bus: takes commands as plain text, makes the break before
 * each, and passes on what the sensors answer when it falls due. For one thread.
 */
final class SimulatedBus {

  private final LongSupplier nanos;
  private final List<SimulatedSensor> sensors = new ArrayList<>();
  private final PriorityQueue<Sending> sendings =
      new PriorityQueue<>(Comparator.comparingLong(Sending::nanos).thenComparing(Sending::order));
  private final StringBuilder command = new StringBuilder();
  private final List<String> commands = new CopyOnWriteArrayList<>();
  private boolean echoes;
  private String before = "";
  private long order;

  SimulatedBus(LongSupplier nanos) {
    this.nanos = nanos;
  }

  private record Sending(long nanos, long order, String text) {}

  void add(SimulatedSensor sensor) {
    sensors.add(sensor);
  }

  /** Whether it sends every command back. */
  void echoes(boolean now) {
    echoes = now;
  }

  /** What comes before every answer. */
  void noise(String text) {
    before = text;
  }

  /** All commands so far. */
  List<String> commands() {
    return commands;
  }

  /** Takes what is sent to it. */
  void take(String sent) {
    for (int i = 0; i < sent.length(); i++) {
      char c = sent.charAt(i);
      command.append(c);
      if (c == '!') {
        String whole = command.toString();
        command.setLength(0);
        commands.add(whole);
        obey(whole);
      }
    }
  }

  private void obey(String whole) {
    if (echoes) {
      later(Duration.ZERO, whole + "\r\n");
    }
    char address = whole.charAt(0);
    String body = whole.substring(1, whole.length() - 1);
    for (SimulatedSensor sensor : sensors) {
      sensor.broken(nanos.getAsLong());
      if (sensor.address() == address || address == '?') {
        Optional<String> answer = sensor.answer(body, nanos.getAsLong());
        answer.ifPresent(text -> later(sensor.delay(), before + text));
        if (answer.isPresent() && body.matches("MC?\\d?")) {
          sensor.serviceRequest().ifPresent(after -> later(after, sensor.address() + "\r\n"));
        }
      }
    }
  }

  private void later(Duration after, String text) {
    sendings.add(new Sending(nanos.getAsLong() + after.toNanos(), order++, text));
  }

  /** What it sends now; empty for nothing. */
  String due() {
    StringBuilder text = new StringBuilder();
    Sending first = sendings.peek();
    while (first != null && first.nanos() - nanos.getAsLong() <= 0) {
      text.append(first.text());
      sendings.remove();
      first = sendings.peek();
    }
    return text.toString();
  }
}
