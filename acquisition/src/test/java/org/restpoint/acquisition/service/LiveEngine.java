package org.restpoint.acquisition.service;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.restpoint.acquisition.event.Event;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.acquisition.event.State;
import org.restpoint.acquisition.records.RecordWriter;
import org.restpoint.acquisition.replay.InstructionFile;
import org.restpoint.acquisition.replay.Replay;
import org.restpoint.adapters.journal.Journal;
import org.restpoint.adapters.journal.JournalReader;
import org.restpoint.adapters.journal.JournalSettings;
import org.restpoint.adapters.journal.SpanQuery;
import org.restpoint.adapters.outbox.OutboxMessage;
import org.restpoint.config.station.Station;
import org.restpoint.stability.reading.Reading;

/** An engine with a real journal and a clock under the hand of a test. */
final class LiveEngine implements EngineListener, AutoCloseable {

  private static final long PATIENCE_SECONDS = 60;
  private static final SpanQuery ALL =
      new SpanQuery(Optional.empty(), Optional.empty(), Optional.empty(), OptionalInt.empty());

  private final CountDownLatch begun = new CountDownLatch(2);
  private final BlockingQueue<Instant> raw = new LinkedBlockingQueue<>();
  private final BlockingQueue<Event> happened = new LinkedBlockingQueue<>();
  private final BlockingQueue<JsonNode> confided = new LinkedBlockingQueue<>();
  private final List<String> passed = new CopyOnWriteArrayList<>();
  private final Path folder;
  private final Station station;
  private final Journal journal;
  private final Engine engine;
  private volatile Instant now;

  LiveEngine(Path folder, Station station, Instant start) {
    this.folder = folder;
    this.station = station;
    this.now = start;
    this.journal = new Journal(settings());
    journal.start();
    engine = new Engine(station, journal, this::clock, this);
    engine.start();
    try {
      assertThat(begun.await(PATIENCE_SECONDS, TimeUnit.SECONDS)).isTrue();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  /** Looked at once when the engine begins, and again only when it has begun. */
  private Instant clock() {
    begun.countDown();
    return now;
  }

  private JournalSettings settings() {
    return new JournalSettings(station.journal(), folder.resolve("native"));
  }

  @Override
  public void happened(Event event) {
    happened.add(event);
  }

  @Override
  public void passing(String topic, String payload) {
    passed.add(payload);
    if (topic.endsWith("/raw")) {
      raw.add(Instant.parse(parse(payload).get("time").asText()));
    } else if (topic.endsWith("/answer")) {
      confided.add(parse(payload));
    }
  }

  @Override
  public void committed() {
    // The outbox is looked into where it is asked for.
  }

  /** What the clock shows from now on. */
  LiveEngine at(Instant time) {
    now = time;
    return this;
  }

  /** Hands a potential over. */
  LiveEngine read(String probe, Instant time, double millivolts) {
    return read(probe, Reading.ofMillivolts(time, millivolts));
  }

  /** Hands a temperature over. */
  LiveEngine warm(String probe, Instant time, double celsius) {
    return read(probe, new Reading(time, OptionalDouble.empty(), OptionalDouble.of(celsius)));
  }

  private LiveEngine read(String probe, Reading reading) {
    assertThat(engine.handOver(probe).reading(reading)).isTrue();
    return this;
  }

  /** Gives an instruction, and waits until the probe says that it reads. */
  LiveEngine begin(String probe, String instruction) {
    tell(probe, instruction);
    String state = next(State.class).state();
    while (!state.startsWith("reading") && !state.equals("verifying")) {
      state = next(State.class).state();
    }
    return this;
  }

  /** Gives an instruction as the broker brings it. */
  LiveEngine tell(String probe, String instruction) {
    return tell(probe, instruction, false);
  }

  /** Gives an instruction, perhaps one that the broker says it has sent before. */
  LiveEngine tell(String probe, String instruction, boolean repeated) {
    engine.instruct(new Input.Message(probe, instruction, false, repeated, () -> {}));
    return this;
  }

  /** Waits for an event of a kind; fails when none comes. */
  <T extends Event> T next(Class<T> kind) {
    try {
      while (true) {
        Event event = happened.poll(PATIENCE_SECONDS, TimeUnit.SECONDS);
        assertThat(event).as("a %s", kind.getSimpleName()).isNotNull();
        if (kind.isInstance(event)) {
          return kind.cast(event);
        }
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  /** Waits for the next reading that goes out, and tells its time; fails when none comes. */
  Instant nextRaw() {
    try {
      Instant time = raw.poll(PATIENCE_SECONDS, TimeUnit.SECONDS);
      assertThat(time).as("a reading").isNotNull();
      return time;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  /** Waits for an answer that is for the caller alone; fails when none comes. */
  JsonNode nextConfided() {
    try {
      JsonNode answer = confided.poll(PATIENCE_SECONDS, TimeUnit.SECONDS);
      assertThat(answer).as("an answer").isNotNull();
      return answer;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  /** What went out past the journal so far. */
  List<String> passed() {
    return List.copyOf(passed);
  }

  /** The engine has taken all it was given and has ended; the journal stays open. */
  LiveEngine end() {
    engine.close();
    return this;
  }

  /** What waits to be sent on topics that end so. */
  List<JsonNode> sent(String topicEnd) {
    return journal.unsent(0, 10_000).stream()
        .filter(message -> message.topic().endsWith(topicEnd))
        .map(OutboxMessage::payload)
        .map(LiveEngine::parse)
        .toList();
  }

  /** What a replay of the journal makes of it: results and calibrations. */
  List<JsonNode> replayed() {
    try {
      Path recording = Files.writeString(folder.resolve("readings.csv"), written(true));
      Path instructions = Files.writeString(folder.resolve("told.jsonl"), written(false));
      List<JsonNode> events = new ArrayList<>();
      new Replay(
              station, false, event -> events.add(parse(EventJson.write(event))), complaint -> {})
          .run(recording, InstructionFile.read(instructions));
      return events;
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  private String written(boolean readings) {
    StringWriter text = new StringWriter();
    try (JournalReader reader = new JournalReader(settings())) {
      reader.start();
      RecordWriter writer = new RecordWriter(reader, station.name(), text);
      if (readings) {
        writer.readings(ALL, true);
      } else {
        writer.instructions(ALL, false);
      }
    }
    return text.toString();
  }

  private static JsonNode parse(String json) {
    try {
      return EventJson.mapper().readTree(json);
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  @Override
  public void close() {
    engine.close();
    journal.close();
  }
}
