package org.restpoint.acquisition.demo;

import java.time.Duration;
import java.time.Instant;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import org.restpoint.acquisition.event.Calibration;
import org.restpoint.acquisition.event.Event;
import org.restpoint.acquisition.event.Notice;
import org.restpoint.acquisition.event.Progress;
import org.restpoint.acquisition.event.RawReading;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.event.State;

/** Writes into the account what the station says by itself, and of its many readings a few. */
final class Reporter implements Consumer<Event> {

  private static final Duration BETWEEN_PROGRESS = Duration.ofSeconds(30);
  private static final Duration BETWEEN_SOAKING = Duration.ofMinutes(4);

  private final Account account;
  private Instant nextLine = Instant.MAX;
  private boolean soaking;
  private OptionalDouble readMillivolts = OptionalDouble.empty();

  Reporter(Account account) {
    this.account = account;
  }

  @Override
  public void accept(Event event) {
    if (event instanceof Progress progress) {
      readMillivolts = OptionalDouble.of(progress.latestMillivolts());
      if (!soaking) {
        sometimes(progress.time(), BETWEEN_PROGRESS, Sentences.progress(progress));
      }
    } else if (event instanceof RawReading reading) {
      if (soaking && reading.millivolts().isPresent()) {
        sometimes(
            reading.time(),
            BETWEEN_SOAKING,
            Sentences.number("%8.2f mV", reading.millivolts().getAsDouble()));
      }
    } else if (event instanceof State state) {
      soaking = state.state().equals("soaking");
      boolean busy =
          soaking || state.state().startsWith("reading") || state.state().equals("verifying");
      nextLine = busy ? state.time() : Instant.MAX;
    } else if (event instanceof Calibration calibration) {
      account.at(calibration.time(), Sentences.calibration(calibration, readMillivolts));
    } else if (event instanceof Result result) {
      account.at(result.time(), Sentences.result(result, readMillivolts));
    } else if (event instanceof Notice notice) {
      account.at(notice.time(), "NOTICE %s: %s".formatted(notice.code(), notice.text()));
    }
  }

  private void sometimes(Instant time, Duration between, String line) {
    if (!time.isBefore(nextLine)) {
      account.at(time, line);
      nextLine = time.plus(between);
    }
  }
}
