package org.restpoint.adapters.recording;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.time.Instant;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.adapters.link.CollectingListener;
import org.restpoint.adapters.link.Eventually;
import org.restpoint.adapters.link.LinkCounts;

/** A growing recording, the link that follows it, and its clocks. */
abstract class FollowBench {

  static final Instant NOW = Instant.parse("2026-10-25T00:30:00Z");

  static final FollowSettings NATIVE =
      new FollowSettings(
          Path.of("made-up.csv"),
          "a",
          RecordingLayout.NATIVE,
          false,
          new Stamp.Recorded(Duration.ofMinutes(5)),
          Duration.ofMinutes(10));

  final CollectingListener heard = new CollectingListener();
  final AtomicLong nanos = new AtomicLong();
  private final AtomicLong asked = new AtomicLong();
  final Path folder;
  final Path file;
  FollowLink link = new FollowLink(NATIVE, heard, () -> NOW, nanos::get);

  FollowBench(@TempDir Path folder) {
    this.folder = folder;
    this.file = folder.resolve("made-up.csv");
  }

  @AfterEach
  void closeTheLink() {
    link.close();
  }

  static FollowSettings fromStart(FollowSettings settings) {
    return new FollowSettings(
        settings.file(),
        settings.probe(),
        settings.layout(),
        true,
        settings.stamp(),
        settings.noDataAfter());
  }

  void follow(UnaryOperator<FollowSettings> changed) {
    follow(changed, NOW);
  }

  void follow(UnaryOperator<FollowSettings> changed, Instant now) {
    FollowSettings here =
        new FollowSettings(
            file,
            NATIVE.probe(),
            NATIVE.layout(),
            NATIVE.fromStart(),
            NATIVE.stamp(),
            NATIVE.noDataAfter());
    link = new FollowLink(changed.apply(here), heard, () -> now, this::tick);
    link.start();
  }

  /** What the link has counted when it has ended. */
  LinkCounts counts() {
    link.close();
    return link.counts();
  }

  /** Waits until the link has looked several times more and found nothing. */
  void settled() throws InterruptedException {
    long before = asked.get();
    Eventually.become("looked again", () -> asked.get() >= before + 10);
  }

  /** The link looks at this clock each time it has found nothing. */
  private long tick() {
    asked.incrementAndGet();
    return nanos.get();
  }

  void write(String text) throws IOException {
    Files.write(file, text.getBytes(StandardCharsets.ISO_8859_1));
  }

  void append(String text) throws IOException {
    Files.writeString(file, text, StandardOpenOption.APPEND);
  }
}
