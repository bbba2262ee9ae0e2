package org.restpoint.acquisition.log;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.slf4j.LoggerFactory;

class QuietStartTest {

  /** A program that logs without setting up the log. */
  static final class Talker {
    private Talker() {}

    public static void main(String[] arguments) {
      LoggerFactory.getLogger("org.restpoint.Talker").info("chatter");
      LoggerFactory.getLogger("some.library.Part").warn("trouble");
      System.out.println("a result");
    }
  }

  @Test
  void whoNeverSetsUpTheLogSeesWarningsOnStandardErrorAndResultsAlone(@TempDir Path folder)
      throws IOException, InterruptedException {
    Path out = folder.resolve("out");
    Path err = folder.resolve("err");
    Process process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path"),
                Talker.class.getName())
            .redirectOutput(out.toFile())
            .redirectError(err.toFile())
            .start();

    assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
    assertThat(Files.readString(out, UTF_8)).isEqualTo("a result" + System.lineSeparator());
    assertThat(Files.readString(err, UTF_8).lines())
        .singleElement()
        .asString()
        .endsWith("WARN  trouble [Part]");
  }
}
