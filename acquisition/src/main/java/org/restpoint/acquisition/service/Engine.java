package org.restpoint.acquisition.service;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.jspecify.annotations.Nullable;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.acquisition.event.Notice;
import org.restpoint.acquisition.station.StationRoutine;
import org.restpoint.adapters.journal.Journal;
import org.restpoint.adapters.journal.JournalException;
import org.restpoint.adapters.link.LinkListener;
import org.restpoint.adapters.link.LinkTrouble;
import org.restpoint.config.station.Station;
import org.restpoint.stability.reading.Reading;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The one thread that runs a station: it takes what links and callers hand over, in order, lets the
 * routines decide, and has the journal keep the outcome before anybody hears of it.
 */
public final class Engine implements AutoCloseable {

  private static final Logger LOG = LoggerFactory.getLogger(Engine.class);

  /** How often time passes for the routines when nothing comes in. */
  private static final Duration TICK = Duration.ofMillis(100);

  /**
   * Time passes for the routines this much late, so that a reading stamped before a deadline and
   * still on its way is taken before the deadline is.
   */
  private static final Duration GRACE = Duration.ofMillis(250);

  private static final Duration RETRY = Duration.ofSeconds(1);
  private static final Duration CLOSE_WITHIN = Duration.ofSeconds(3);
  private static final int MOST_AT_ONCE = 4096;

  /**
   * Instructions come from people and rigs; so many wait only when the journal cannot be written.
   */
  private static final int MOST_TOLD = 1024;

  private final Station station;
  private final Journal journal;
  private final InstantSource clock;
  private final Desk desk;
  private final Outgoing outgoing;
  private final BlockingQueue<Input> inputs = new LinkedBlockingQueue<>();
  private final AtomicInteger told = new AtomicInteger();
  private final TimeOrder times = new TimeOrder();
  private final Waiting waiting;
  private final Duration behind;
  private final Thread thread = new Thread(this::run, "engine");
  private final StationRoutine routine;
  private volatile boolean closing;
  private volatile @Nullable String journalTrouble;
  private final CompletableFuture<Throwable> defect = new CompletableFuture<>();

  /** An engine that goes on from what the journal, which is open, remembers. */
  public Engine(Station station, Journal journal, InstantSource clock, EngineListener listener) {
    this.station = station;
    this.journal = journal;
    this.clock = clock;
    Duration lateBy = lateBy(station);
    this.waiting = new Waiting(lateBy);
    this.behind = lateBy.compareTo(GRACE) > 0 ? lateBy : GRACE;
    this.outgoing = new Outgoing(new Topics(station.name()), listener);
    this.routine =
        new StationRoutine(
            station,
            Memories.read(journal.memories()),
            outgoing,
            new JournalArchive(journal, outgoing, this::commitAll),
            false);
    this.desk = new Desk(station, journal, routine, outgoing);
  }

  /** How late the latest of a station's links may bring its readings. */
  private static Duration lateBy(Station station) {
    return station.probes().values().stream()
        .map(probe -> probe.link().lateBy())
        .max(Comparator.naturalOrder())
        .orElse(Duration.ZERO);
  }

  /** Begins. */
  public void start() {
    thread.start();
  }

  /** Where the link of a probe hands over. */
  public LinkListener handOver(String probe) {
    return new HandOver(probe, inputs);
  }

  /**
   * Takes an instruction from the broker; it is stored and carried out by the engine's thread.
   *
   * @throws ServiceException when too many wait; the instruction is not taken
   */
  public void instruct(Input.Message message) {
    if (told.incrementAndGet() > MOST_TOLD) {
      told.decrementAndGet();
      throw new ServiceException("%d instructions wait to be carried out".formatted(MOST_TOLD));
    }
    inputs.add(new Input.Told(message));
  }

  /** What keeps the journal from being written; null while it is well. */
  public @Nullable String journalTrouble() {
    return journalTrouble;
  }

  /** The defect of the service's own that has ended the engine: nothing is decided any more. */
  CompletionStage<Throwable> defect() {
    return defect;
  }

  /** How many inputs wait to be looked at. */
  public int waiting() {
    return inputs.size();
  }

  private void run() {
    try {
      Instant start = now();
      times.passed(start);
      routine.begin(start);
      commit();
      while (!closing || !inputs.isEmpty()) {
        takeWaiting();
        // Looked at before the inputs are: what comes in after this look is not of an earlier time.
        Instant passed = now().minus(behind);
        if (inputs.isEmpty()) {
          times.passed(passed);
          routine.elapse(passed);
        }
        if (outgoing.isUrgent() || outgoing.isFull()) {
          commit();
        }
      }
      for (Optional<Waiting.Held> last = waiting.next(); last.isPresent(); last = waiting.next()) {
        take(last.get());
      }
      commit();
    } catch (InterruptedException e) {
      LOG.warn("the engine was stopped before everything was written");
    } catch (RuntimeException | Error e) {
      journalTrouble = "the engine has ended: " + e;
      LOG.error("the engine has ended by a defect of the service's own", e);
      defect.complete(e);
    }
  }

  private void takeWaiting() throws InterruptedException {
    Input first = inputs.poll(TICK.toMillis(), TimeUnit.MILLISECONDS);
    if (first != null) {
      List<Input> taken = new ArrayList<>();
      taken.add(first);
      inputs.drainTo(taken, MOST_AT_ONCE);
      taken.forEach(this::hold);
    }
    takeDue();
  }

  /** What has a time waits for its turn; troubles have none. */
  private void hold(Input input) {
    if (input instanceof Input.FromLink from) {
      waiting.add(from.reading().time(), from);
    } else if (input instanceof Input.Told instruction) {
      waiting.add(now(), instruction);
    } else if (input instanceof Input.Trouble trouble) {
      trouble.from().taken();
      tell(trouble.probe(), trouble.trouble());
    }
  }

  private void takeDue() {
    Optional<Waiting.Held> next = waiting.next(now());
    while (next.isPresent()) {
      take(next.get());
      next = waiting.next(now());
    }
  }

  private void take(Waiting.Held held) {
    times.follow(now());
    if (held.input() instanceof Input.FromLink from) {
      from.from().taken();
      read(from.probe(), from.reading());
    } else if (held.input() instanceof Input.Told instruction) {
      told.decrementAndGet();
      desk.take(times.ofInstruction(held.time()), instruction.message());
    }
  }

  private void read(String probe, Reading reading) {
    Instant time = times.ofReading(reading.time());
    Reading kept = new Reading(time, reading.millivolts(), reading.celsius());
    routine.elapse(time);
    if (!routine.withholds(probe)) {
      outgoing.keep(probe, kept);
    }
    routine.reading(probe, kept);
  }

  private void tell(String probe, LinkTrouble told) {
    LinkTrouble trouble = routine.withholds(probe) ? Confidence.unquoted(told) : told;
    if (trouble.remedy().isEmpty()) {
      LOG.info("{}: {}", probe, trouble.text());
    } else {
      LOG.warn("{}: {}. {}", probe, trouble.text(), trouble.remedy());
    }
    outgoing.event(
        new Notice(
            Notices.newId(probe),
            station.name(),
            probe,
            now(),
            trouble.code(),
            trouble.text(),
            trouble.remedy()));
  }

  private void commit() throws InterruptedException {
    Map<String, String> memories = new HashMap<>();
    for (String probe : outgoing.changedProbes()) {
      routine.memory(probe).map(EventJson::write).ifPresent(json -> memories.put(probe, json));
    }
    while (true) {
      try {
        journal.commit(outgoing.batch(memories));
        journalTrouble = null;
        outgoing.committed();
        return;
      } catch (JournalException e) {
        LOG.error("the journal cannot be written, trying again: {}", e.getMessage());
        journalTrouble = e.getMessage();
        if (closing) {
          return;
        }
        TimeUnit.MILLISECONDS.sleep(RETRY.toMillis());
      }
    }
  }

  /** What was decided so far is on disk, with what every probe remembers now. */
  private void commitAll() {
    outgoing.change(station.probes().keySet());
    try {
      commit();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new ServiceException("the engine was stopped before everything was written");
    }
  }

  private Instant now() {
    return clock.instant().truncatedTo(ChronoUnit.MILLIS);
  }

  /** Takes what still waits, has it written, and ends; within 3 s. */
  @Override
  public void close() {
    closing = true;
    try {
      thread.join(CLOSE_WITHIN.toMillis());
      if (thread.isAlive()) {
        thread.interrupt();
        thread.join(TICK.toMillis());
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
