package org.restpoint.acquisition.service;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.acquisition.service.Waiting.Held;

/** Readings that carry a time of their own and come late keep it, in the order of the times. */
class LateReadingsTest {

  private static final Instant START = Instant.parse("2026-04-02T14:00:00Z");

  @TempDir Path folder;

  private static Instant at(long seconds) {
    return START.plusSeconds(seconds);
  }

  /** An engine that has begun at 0 s and has taken a reading of then. */
  private LiveEngine engine(String lateBy, long lateBySeconds) {
    LiveEngine engine = begun(lateBy).warm("temp-2", START, 20);
    assertThat(engine.at(at(lateBySeconds)).nextRaw()).isEqualTo(START);
    return engine;
  }

  private LiveEngine begun(String lateBy) {
    return new LiveEngine(
        folder,
        Stations.read(
            folder,
            """
            station: brook
            broker: { embedded: { port: 0 } }
            probes:
              temp-1:
                measures: temperature
                link: { mqtt: { topic: a, celsius: /t, time: /ts, late-by: %s } }
                raw: true
              temp-2:
                measures: temperature
                link: { mqtt: { topic: b, celsius: "" } }
                raw: true
            """
                .formatted(lateBy)),
        START);
  }

  private static List<Instant> next(LiveEngine engine, int count) {
    List<Instant> times = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      times.add(engine.nextRaw());
    }
    return times;
  }

  @Test
  void aReadingBehindAnotherProbesKeepsItsTime() {
    try (LiveEngine engine = engine("5 s", 5)) {
      engine
          .at(at(4))
          .warm("temp-2", at(4), 20)
          .warm("temp-1", at(1), 21)
          .warm("temp-1", at(2), 21);
      engine.at(at(9));
      assertThat(next(engine, 3)).containsExactly(at(1), at(2), at(4));
    }
  }

  @Test
  void oneThatComesLaterThanThatIsMovedToTheTimeReached() {
    try (LiveEngine engine = engine("1 s", 1)) {
      engine.at(at(4)).warm("temp-2", at(3), 20);
      assertThat(next(engine, 1)).containsExactly(at(3));
      engine.warm("temp-1", at(1), 21);
      assertThat(next(engine, 1).get(0)).isAfterOrEqualTo(at(3));
    }
  }

  @Test
  void whatStillWaitsAtTheEndIsTaken() {
    LiveEngine engine = engine("1 h", 3600);
    engine.warm("temp-1", at(3), 20).end();
    assertThat(next(engine, 1)).containsExactly(at(3));
    engine.close();
  }

  @Test
  void withoutASpanAllComesOutAsItCame() {
    Waiting waiting = new Waiting(Duration.ZERO);
    Input.Told first = told("first");
    Input.Told second = told("second");
    waiting.add(at(9), first);
    waiting.add(at(1), second);
    assertThat(waiting.next(at(0))).map(Held::input).contains(first);
    assertThat(waiting.next(at(0))).map(Held::input).contains(second);
    assertThat(waiting.next(at(0))).isEmpty();
  }

  @Test
  void withASpanEachWaitsUntilItsTimeIsThatLongPast() {
    Waiting waiting = new Waiting(Duration.ofSeconds(2));
    Input.Told later = told("later");
    Input.Told earlier = told("earlier");
    waiting.add(at(5), later);
    waiting.add(at(4), earlier);
    assertThat(waiting.next(at(5))).isEmpty();
    assertThat(waiting.next(at(6))).contains(new Held(at(4), 1, earlier));
    assertThat(waiting.next(at(6))).isEmpty();
    assertThat(waiting.next()).map(Held::input).contains(later);
    assertThat(waiting.next()).isEqualTo(Optional.empty());
  }

  private static Input.Told told(String text) {
    return new Input.Told(new Input.Message("no3-a", text, false, false, () -> {}));
  }
}
