package org.restpoint.adapters.recording;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.adapters.link.AbsentSourceContract;
import org.restpoint.adapters.link.Link;
import org.restpoint.adapters.link.LinkListener;
import org.restpoint.stability.reading.Reading;

/**
 * A recording of ten minutes, read at the speed it was made. Once open it cannot be lost: a file
 * that is open stays readable.
 */
class RecordingLinkContractTest extends AbsentSourceContract {

  private static final int ROWS = 60_000;

  @TempDir private Path folder;

  @Override
  protected Link createLink(LinkListener listener) throws Exception {
    Files.writeString(
        file(),
        IntStream.range(0, ROWS)
            .mapToObj(row -> "%d.%02d,a,%d,".formatted(row / 100, row % 100, row))
            .collect(Collectors.joining("\n", RecordingReader.HEADER + "\n", "\n")));
    return new RecordingLink(
        new RecordingSettings(file(), "a"), listener, InstantSource.system(), System::nanoTime);
  }

  private Path file() {
    return folder.resolve("made-up.csv");
  }

  private Path elsewhere() {
    return folder.resolve("elsewhere.csv");
  }

  @Override
  protected void deliver(double millivolts) {
    // The next row comes when it is its time.
  }

  @Override
  protected boolean sends(Reading reading, double delivered) {
    double millivolts = reading.millivolts().getAsDouble();
    return millivolts == Math.rint(millivolts) && millivolts >= 0 && millivolts < ROWS;
  }

  @Override
  protected void takeAway() throws Exception {
    Files.move(file(), elsewhere());
  }

  @Override
  protected void bringBack() throws Exception {
    Files.move(elsewhere(), file());
  }
}
