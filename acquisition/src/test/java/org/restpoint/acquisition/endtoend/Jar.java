package org.restpoint.acquisition.endtoend;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** The runnable file under test. */
final class Jar {

  private Jar() {}

  /** Where it is. */
  static Path file() {
    String file = System.getProperty("restpoint.jar");
    if (file == null) {
      throw new IllegalStateException("the system property restpoint.jar says where the jar is");
    }
    return Path.of(file);
  }

  /** How the Java that runs the tests is called. */
  static String java() {
    return Path.of(System.getProperty("java.home"), "bin", "java").toString();
  }

  /** {@code java -jar restpoint.jar} with arguments; starting soon counts here, not speed. */
  static List<String> command(Object... arguments) {
    List<String> command =
        new ArrayList<>(
            List.of(
                java(), "-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC", "-jar", file().toString()));
    for (Object argument : arguments) {
      command.add(argument.toString());
    }
    return command;
  }
}
