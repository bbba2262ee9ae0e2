package org.restpoint.acquisition.station;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.config.file.Problem;
import org.restpoint.config.file.StationFile;
import org.restpoint.config.file.StationFile.Outcome;

/** Figures that no thermometer has are a mistake in the station file, told with key and line. */
class ImpossibleThermometerTest {

  @TempDir Path folder;

  private List<String> problems(String thermometer) throws IOException {
    Path file =
        Files.writeString(
            folder.resolve("station.yaml"),
            """
            station: a
            broker: embedded
            probes:
              water:
                measures: temperature
                link:
                  serial:
                    port: /dev/ttyUSB0
                    line: '(?<ohms>.+)'
                    thermometer: %s
            """
                .formatted(thermometer));
    return StationFile.read(file, StationTerms.vocabulary()) instanceof Outcome.Refused refused
        ? refused.problems().stream().map(Problem::text).toList()
        : List.of();
  }

  @Test
  void coefficientsInAWrongOrderAreTold() throws IOException {
    assertThat(problems("{ a: 1.129e-3, b: 0, c: 2.341e-4 }"))
        .containsExactly(
            "probes.water.link.serial.thermometer (line 10): expected the figures of a thermometer;"
                + " found other figures: the coefficients of a thermistor are finite, and b above"
                + " zero; these are 0.001129, 0.0, 2.341E-4: look whether their order is a, b, c"
                + " and their resistance in ohm");
  }

  @Test
  void aCurveThatTurnsIsTold() throws IOException {
    assertThat(problems("{ a: 1.129e-3, b: 2.341e-4, c: -8.775e-7 }"))
        .containsExactly(
            "probes.water.link.serial.thermometer (line 10): expected the figures of a thermometer;"
                + " found other figures: a thermometer's resistance is finite, above zero and only"
                + " rises or only falls; these figures give no such resistance from -50.0 to 150.0"
                + " °C: look whether they are this thermometer's, in ohm and kelvin");
  }

  @Test
  void thermometersThatCanBeAreTaken() throws IOException {
    assertThat(problems("{ a: 1.129e-3, b: 2.341e-4, c: 8.775e-8 }")).isEmpty();
    assertThat(problems("{ beta: 3435 K, resistance: 10 kOhm, at: 25 Cel }")).isEmpty();
    assertThat(problems("pt1000")).isEmpty();
  }
}
