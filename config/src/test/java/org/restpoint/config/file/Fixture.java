package org.restpoint.config.file;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.restpoint.config.file.StationFile.Outcome;
import org.restpoint.config.station.Station;
import org.restpoint.config.station.Thermometer;

/** Station files for tests. */
record Fixture(Path folder) {

  static final Vocabulary VOCABULARY =
      new Vocabulary(
          Map.of(
              "nitrate", Set.of("as-N", "as-ion"),
              "ammonium", Set.of("as-N", "as-ion"),
              "chloride", Set.of("as-ion"),
              "fluoride", Set.of("as-ion"),
              "hydrogen", Set.of(),
              "nitrite", Set.of("as-N", "as-ion"),
              "sodium", Set.of()),
          Set.of("hydrogen"),
          Set.of("phthalate", "phosphate", "borate"),
          Set.of("nitrate", "chloride", "fluoride", "nitrite"),
          thermometer ->
              thermometer instanceof Thermometer.SteinhartHart given && given.b() <= 0
                  ? Optional.of("b is above zero")
                  : Optional.empty(),
          Map.of(
              "us-drinking-water", new KnownTable(false, Set.of()),
              "late-spring-soil", new KnownTable(true, Set.of("critical")),
              "autumn-residual-soil", new KnownTable(true, Set.of("bulk-density"))));

  static String example(String name) {
    try (var in = Fixture.class.getResourceAsStream("/stations/" + name)) {
      assertThat(in).as(name).isNotNull();
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** An example with one thing changed, which must stand in it exactly once. */
  static String changed(String name, String from, String to) {
    String text = example(name);
    assertThat(text.split(java.util.regex.Pattern.quote(from), -1)).as(from).hasSize(2);
    return text.replace(from, to);
  }

  Path file() {
    return folder.resolve("station.yaml");
  }

  Outcome read(String text) {
    return read(text.getBytes(StandardCharsets.UTF_8));
  }

  Outcome read(byte[] bytes) {
    try {
      Files.write(file(), bytes);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return StationFile.read(file(), VOCABULARY);
  }

  Station understood(String text) {
    Outcome outcome = read(text);
    assertThat(outcome).isInstanceOf(Outcome.Understood.class);
    return ((Outcome.Understood) outcome).station();
  }

  List<String> problems(String text) {
    Outcome outcome = read(text);
    assertThat(outcome).isInstanceOf(Outcome.Refused.class);
    return ((Outcome.Refused) outcome).problems().stream().map(Problem::text).toList();
  }
}
