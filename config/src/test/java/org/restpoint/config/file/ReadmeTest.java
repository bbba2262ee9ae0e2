package org.restpoint.config.file;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.config.station.Station;

/** The module's README keeps its word. Maven runs tests in the module's folder. */
class ReadmeTest {

  private static final Path README = Path.of("README.md");

  @TempDir Path folder;

  private static String block(String language) throws IOException {
    String text = Files.readString(README);
    int from = text.indexOf("```" + language + "\n") + language.length() + 4;
    return text.substring(from, text.indexOf("\n```\n", from) + 1);
  }

  @Test
  void itsStationIsUnderstood() throws IOException {
    Station station = new Fixture(folder).understood(block("yaml"));

    assertThat(station.probes().keySet()).containsExactly("no3-a", "no3-stream", "temp-1");
  }

  @Test
  void itsElectrodesOfWhichMoreIsKnownAreUnderstood() throws IOException {
    String text = Files.readString(README);
    List<String> blocks =
        Stream.of(text.split("```yaml\n", -1))
            .skip(2)
            .map(rest -> rest.substring(0, rest.indexOf("\n```\n") + 1))
            .toList();

    assertThat(blocks)
        .map(block -> new Fixture(folder).understood("station: a\nbroker: embedded\n" + block))
        .map(station -> String.join("", station.probes().keySet()))
        .containsExactly("no3-drain", "ph-1", "no3-well", "no3-field");
  }

  @Test
  void itsProblemsAreWordedAsTheReaderWordsThem() throws IOException {
    String wrong =
        Fixture.changed("bench.yaml", "within:", "wihtin:")
            .replace("[low, mid, high]", "[low, mdi, high]");

    assertThat(block("text").lines().toList()).isEqualTo(new Fixture(folder).problems(wrong));
  }

  @Test
  void itExplainsEveryKey() throws IOException {
    String text = Files.readString(README);
    Stream<List<String>> keys =
        Stream.of(
            StationReader.KEYS,
            BrokerReader.REMOTE_KEYS,
            StandardReader.KEYS,
            ProbeReader.ELECTRODE_KEYS,
            ProbeReader.THERMOMETER_KEYS,
            SerialReader.KEYS,
            Sdi12Reader.KEYS,
            List.of("platinum"),
            ThermometerReader.BETA_KEYS,
            ThermometerReader.COEFFICIENT_KEYS,
            ModbusReader.KEYS,
            ModbusRegisterReader.KEYS,
            MqttReader.KEYS,
            RecordingKeys.KEYS,
            RecordingColumnsReader.WORDS,
            SimulatedReader.ELECTRODE_KEYS,
            SimulatedReader.THERMOMETER_KEYS,
            SimulatedTemperatureReader.KEYS,
            SimulatedVisitsReader.KEYS,
            SimulatedFaultsReader.KEYS,
            TemperatureReader.KINDS,
            TemperatureReader.FIXED_KEYS,
            TemperatureReader.PROBE_KEYS,
            SettleReader.KEYS,
            CalibrateReader.KEYS,
            ChecksReader.KEYS,
            ChecksReader.STANDARD_KEYS,
            ChecksReader.BLANK_KEYS,
            ChecksReader.DUPLICATE_KEYS,
            ChecksReader.SPIKE_KEYS,
            LowEndReader.FIXED_KEYS,
            CompensationReader.ISOPOTENTIAL_KEYS,
            CompensationReader.COEFFICIENT_KEYS,
            ActivityReader.KEYS,
            InterferentsReader.KNOWN_KEYS,
            InterferentsReader.AT_MOST_KEYS,
            RecipeReader.SOIL_KEYS,
            RecipeReader.WATER_KEYS,
            RecipeReader.EXTRACTANT_KEYS,
            RecipeReader.MOISTURE_KEYS,
            RecipeReader.DILUTION_KEYS,
            SoilPortionReader.SCOOP_KEYS,
            SoilPortionReader.MASS_KEYS,
            VesselReader.POURED_KEYS,
            VesselReader.SHARE_KEYS,
            PublishedTableReader.KEYS,
            OwnTableReader.KEYS,
            BandsReader.KEYS,
            MovesReader.KEYS);

    assertThat(keys.flatMap(List::stream).distinct())
        .allSatisfy(key -> assertThat(text).contains("\n| `" + key + "` | "));
    assertThat(LinkReader.KINDS)
        .allSatisfy(kind -> assertThat(text).contains("\n### `link." + kind + "`\n"));
  }
}
