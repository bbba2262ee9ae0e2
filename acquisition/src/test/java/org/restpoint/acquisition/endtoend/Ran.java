package org.restpoint.acquisition.endtoend;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.restpoint.acquisition.event.EventJson;

/**
 * A command that has run to its end in a process of its own.
 *
 * @param exitStatus its exit status
 * @param out what it wrote on standard output
 * @param err what it wrote on standard error
 */
record Ran(int exitStatus, String out, String err) {

  private static final long LIMIT_SECONDS = 120;

  /** Runs the jar with arguments and waits for its end. */
  static Ran restpoint(Path folder, Object... arguments) {
    return command(folder, Jar.command(arguments));
  }

  /**
   * Runs any command in the folder and waits for its end; what it writes goes through files there.
   */
  static Ran command(Path folder, List<String> command) {
    try {
      Path out = Files.createTempFile(folder, "out", ".txt");
      Path err = Files.createTempFile(folder, "err", ".txt");
      Process process =
          new ProcessBuilder(command)
              .directory(folder.toFile())
              .redirectOutput(out.toFile())
              .redirectError(err.toFile())
              .start();
      process.getOutputStream().close();
      if (!process.waitFor(LIMIT_SECONDS, TimeUnit.SECONDS)) {
        process.destroyForcibly();
        throw new AssertionError("%s did not end".formatted(command));
      }
      return new Ran(process.exitValue(), Files.readString(out), Files.readString(err));
    } catch (IOException e) {
      throw new IllegalStateException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  /** Fails, with all that was said, unless it ended well. */
  Ran well() {
    assertThat(exitStatus).as("%s%n%s", out, err).isZero();
    return this;
  }

  /** Its standard output, a JSON object a line. */
  List<JsonNode> json() {
    List<JsonNode> objects = new ArrayList<>();
    out.lines().forEach(line -> objects.add(parse(line)));
    return objects;
  }

  static JsonNode parse(String json) {
    try {
      return EventJson.mapper().readTree(json);
    } catch (JsonProcessingException e) {
      throw new AssertionError("not JSON: " + json, e);
    }
  }
}
