package org.restpoint.adapters.mqtt;

import java.time.Duration;
import java.util.function.LongSupplier;

/** The first time, and then at most once in a span: keeps a flood out of the log. */
final class SometimesTold {

  private final Duration span;
  private final LongSupplier nanos;
  private boolean told;
  private long toldAtNanos;

  SometimesTold(Duration span, LongSupplier nanos) {
    this.span = span;
    this.nanos = nanos;
  }

  /** Whether it is to be told now; a yes begins a new span. */
  boolean now() {
    long now = nanos.getAsLong();
    if (told && now - toldAtNanos < span.toNanos()) {
      return false;
    }
    told = true;
    toldAtNanos = now;
    return true;
  }
}
