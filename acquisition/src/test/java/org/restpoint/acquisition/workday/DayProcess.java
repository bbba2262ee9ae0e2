package org.restpoint.acquisition.workday;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.ProcessBuilder.Redirect;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;

/** A {@link DayService} that runs. */
final class DayProcess implements AutoCloseable {

  /** The file of its clock. */
  static final String CLOCK = "clock";

  private static final long ENDS_WITHIN_SECONDS = 20;

  private final Process process;

  private DayProcess(Process process) {
    this.process = process;
  }

  /** Starts it and waits until it hears readings. */
  static DayProcess start(Path folder, Path station) {
    try {
      Process process =
          new ProcessBuilder(
                  Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                  "-XX:TieredStopAtLevel=1", // it does not live long enough for more to pay
                  "-cp",
                  System.getProperty("java.class.path"),
                  DayService.class.getName(),
                  station.toString(),
                  folder.resolve("native").toString(),
                  folder.resolve(CLOCK).toString())
              .redirectError(Redirect.appendTo(folder.resolve("service.log").toFile()))
              .start();
      DayProcess started = new DayProcess(process);
      BufferedReader said = process.inputReader(StandardCharsets.UTF_8);
      for (String line = said.readLine(); !DayService.HEARS.equals(line); line = said.readLine()) {
        assertThat(line).as("what it says, see service.log").isNotNull();
      }
      return started;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The power fails: it is killed (SIGKILL), with nothing written that was not. */
  void kill() {
    process.destroyForcibly();
    awaitEnd();
  }

  /** It ends as a service ends. */
  void end() {
    try {
      process.getOutputStream().close();
      awaitEnd();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void awaitEnd() {
    try {
      assertThat(process.waitFor(ENDS_WITHIN_SECONDS, TimeUnit.SECONDS)).isTrue();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  @Override
  public void close() {
    process.destroyForcibly();
  }
}
