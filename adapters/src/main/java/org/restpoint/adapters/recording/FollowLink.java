package org.restpoint.adapters.recording;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;
import org.restpoint.adapters.link.Delivery;
import org.restpoint.adapters.link.Link;
import org.restpoint.adapters.link.LinkCounts;
import org.restpoint.adapters.link.LinkHealth;
import org.restpoint.adapters.link.LinkHealth.Condition;
import org.restpoint.adapters.link.LinkListener;
import org.restpoint.adapters.link.LinkState;
import org.restpoint.adapters.link.LinkThread;
import org.restpoint.adapters.link.LinkTrouble;
import org.restpoint.stability.reading.Reading;

/**
 * Reads one probe's rows of a recording while it grows, on a thread of its own, within a fifth of a
 * second. The file may be absent, vanish, be cut, written anew or replaced: see {@link
 * GrowingFile}.
 *
 * <p>Counted are this probe's rows and every row that is no reading. Rows that were there at the
 * start are not, unless they are asked for; rows at or before the latest reading are not counted
 * again when the file is read from its beginning once more.
 */
public final class FollowLink implements Link {

  private static final Duration LOOK_EVERY = Duration.ofMillis(200);
  private static final Duration CLOSE_WITHIN = Duration.ofSeconds(2);

  private final FollowSettings settings;
  private final InstantSource clock;
  private final LongSupplier nanos;
  private final Delivery delivery;
  private final FollowNotices notices;
  private final GrowingFile file;
  private final @Nullable NearClock near;
  private final LinkState state = new LinkState();
  private final LinkThread thread;
  private FollowedRows rows;
  private boolean open;
  private String told = "";
  private boolean silent;
  private long arrivalNanos;

  /**
   * A link that follows it; opens nothing.
   *
   * @param clock what recorded times are held against, or stamps rows on arrival
   * @param nanos a monotonic clock in nanoseconds, for silences
   */
  public FollowLink(
      FollowSettings settings, LinkListener listener, InstantSource clock, LongSupplier nanos) {
    this.settings = settings;
    this.clock = clock;
    this.nanos = nanos;
    this.delivery = new Delivery("the recording " + settings.file(), listener, nanos);
    this.notices = new FollowNotices(settings, listener::trouble);
    this.file = new GrowingFile(settings.file());
    this.near =
        settings.stamp() instanceof Stamp.Recorded recorded
            ? new NearClock(clock, recorded.within())
            : null;
    this.rows = rows(!settings.fromStart());
    this.thread = new LinkThread("recording " + settings.probe(), state, this::run);
  }

  @Override
  public void start() {
    state.start("the recording " + settings.file());
    thread.start();
  }

  @Override
  public LinkHealth check() {
    return state.health();
  }

  @Override
  public LinkCounts counts() {
    return delivery.counts();
  }

  @Override
  public void close() {
    thread.close(CLOSE_WITHIN);
    state.become(Condition.CLOSED, "");
  }

  private FollowedRows rows(boolean passing) {
    return new FollowedRows(
        settings.layout(),
        near,
        passing,
        new FollowedRows.Taker() {
          @Override
          public void reading(ProbeReading row) {
            take(row);
          }

          @Override
          public void skipped(SkippedLine line) {
            skip(line);
          }
        });
  }

  private void run() throws InterruptedException {
    try (file) {
      while (!thread.isClosing()) {
        if (look()) {
          continue;
        }
        watch();
        notices.due(nanos.getAsLong());
        delivery.due();
        thread.pause(LOOK_EVERY.toNanos());
      }
    }
  }

  /** Looks once; true where there may be more at once. */
  private boolean look() {
    switch (file.look()) {
      case BYTES -> read();
      case BEGUN, CONTINUED -> opened();
      case REPLACED -> {
        notices.replaced();
        again();
      }
      case REWRITTEN -> {
        notices.rewritten();
        again();
      }
      case NOTHING -> {
        rows.passNoMore();
        return false;
      }
      case ABSENT -> {
        lost(notices.absent());
        return false;
      }
      case UNREADABLE -> {
        lost(notices.unreadable(file.trouble()));
        return false;
      }
    }
    return true;
  }

  private void read() {
    rows.accept(file.bytes());
    Optional<String> misfit = rows.misfit();
    if (misfit.isPresent() && open) {
      lost(notices.misfit(misfit.get()));
    }
  }

  private void again() {
    rows.half().ifPresent(this::skip);
    if (near != null) {
      near.beginAgain();
    }
    rows = rows(false);
    opened();
  }

  private void opened() {
    open = true;
    arrivalNanos = nanos.getAsLong();
    if (!told.isEmpty()) {
      told = "";
      notices.back();
    }
    silent = false;
    state.become(Condition.READING, "");
  }

  private void lost(LinkTrouble why) {
    open = false;
    silent = false;
    rows.passNoMore();
    state.become(Condition.LOST, why);
    if (!told.equals(why.text())) {
      told = why.text();
      notices.tell(why);
    }
  }

  private void take(ProbeReading row) {
    if (!row.probe().isEmpty() && !row.probe().equals(settings.probe())) {
      return;
    }
    arrived();
    Reading reading = row.reading();
    if (near == null) {
      Instant now = clock.instant().truncatedTo(ChronoUnit.MILLIS);
      delivery.reading(new Reading(now, reading.millivolts(), reading.celsius()));
    } else {
      near.reached(reading.time().toEpochMilli());
      delivery.reading(reading);
    }
  }

  private void skip(SkippedLine line) {
    if (line.skip().isRejected()) {
      arrived();
      delivery.rejected();
      notices.rejected(line, nanos.getAsLong());
    }
  }

  private void arrived() {
    arrivalNanos = nanos.getAsLong();
    state.arrived(clock.instant());
    if (silent) {
      silent = false;
      notices.dataBack();
    }
  }

  private void watch() {
    if (open && !silent && nanos.getAsLong() - arrivalNanos >= settings.noDataAfter().toNanos()) {
      silent = true;
      state.become(Condition.SILENT, notices.noData());
      notices.tell(notices.noData());
    }
  }
}
