package org.restpoint.adapters.recording;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.adapters.link.DeviceContract;
import org.restpoint.adapters.link.Link;
import org.restpoint.adapters.link.LinkListener;

/** A recording that another program writes: it deletes it and begins it anew. */
class FollowLinkContractTest extends DeviceContract {

  @TempDir private Path folder;

  @Override
  protected Link createLink(LinkListener listener) throws Exception {
    bringBack();
    FollowSettings settings =
        new FollowSettings(
            file(),
            "a",
            RecordingLayout.NATIVE,
            false,
            new Stamp.Recorded(Duration.ofMinutes(5)),
            Duration.ofMinutes(5));
    return new FollowLink(settings, listener, InstantSource.system(), System::nanoTime);
  }

  private Path file() {
    return folder.resolve("made-up.csv");
  }

  @Override
  protected void deliver(double millivolts) throws Exception {
    append("%s,a,%s,\n".formatted(Instant.now(), millivolts));
  }

  @Override
  protected void deliverBad() throws Exception {
    append("?,a,1,\n");
  }

  private void append(String text) throws Exception {
    if (Files.exists(file())) {
      Files.writeString(file(), text, StandardOpenOption.APPEND);
    }
  }

  @Override
  protected void takeAway() throws Exception {
    Files.delete(file());
  }

  @Override
  protected void bringBack() throws Exception {
    Files.writeString(file(), RecordingReader.HEADER + "\n");
  }
}
