package org.restpoint.config.file;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.Error;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.restpoint.config.file.StationFile.Outcome;
import org.restpoint.config.station.Station;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.schema.JsonSchema;

/** The published JSON Schema says nothing else than the reader. */
class SchemaTest {

  private static final ObjectMapper JSON = new ObjectMapper();
  private static final JsonNode TEXT = text();
  private static final Schema SCHEMA =
      SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12).getSchema(TEXT);

  @TempDir Path folder;

  private static JsonNode text() {
    try (InputStream in =
        Station.class.getResourceAsStream("/org/restpoint/config/station.schema.json")) {
      return JSON.readTree(Objects.requireNonNull(in, "the schema is in the module"));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static List<Error> errors(String yaml) {
    LoadSettings settings = LoadSettings.builder().setSchema(new JsonSchema()).build();
    return SCHEMA.validate(JSON.<JsonNode>valueToTree(new Load(settings).loadFromString(yaml)));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "bench.yaml",
        "stream.yaml",
        "lab.yaml",
        "checks.yaml",
        "field.yaml",
        "recipes.yaml",
        "recording.yaml",
        "simulated.yaml",
        "serial.yaml",
        "modbus.yaml",
        "sdi12.yaml",
        "guidance.yaml",
        "sampler.yaml",
        "smallest.yaml"
      })
  void anExampleIsSoundForBoth(String example) {
    assertThat(errors(Fixture.example(example))).isEmpty();
    assertThat(new Fixture(folder).read(Fixture.example(example)))
        .isInstanceOf(Outcome.Understood.class);
  }

  @EachMistake
  void aMistakeThatASchemaCanSayIsRefusedByBoth(
      String example, String from, String to, String message, String bySchema) {
    String written = to == null ? "" : to.replace('¶', '\n');
    String yaml = Fixture.changed(example, from.replace('¶', '\n'), written);

    assertThat(new Fixture(folder).read(yaml)).isInstanceOf(Outcome.Refused.class);
    assertThat(errors(yaml).isEmpty()).as(message).isEqualTo(!bySchema.equals("yes"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          /properties                                                      | top
          /$defs/standard/properties                                       | standard
          /$defs/electrode/properties                                      | electrode
          /$defs/thermometer/properties                                    | thermometer
          /$defs/electrode/properties/link/properties                      | link
          /$defs/serial/properties                                         | serial
          /$defs/modbus/properties                                         | modbus
          /$defs/register/properties                                       | register
          /$defs/sdi12/properties                                          | sdi12
          /$defs/mqtt/properties                                           | mqtt
          /$defs/recording/properties                                      | recording
          /$defs/recording/properties/columns/properties                   | columns
          /$defs/simulated/properties                                      | simulated
          /$defs/simulated-thermometer/properties                          | made-up thermometer
          /$defs/simulated-temperature/oneOf/1/properties                  | swing
          /$defs/visits/items/properties                                   | visit
          /$defs/fault/properties                                          | fault
          /$defs/source/oneOf/1/properties                                 | fixed
          /$defs/source/oneOf/2/properties                                 | probe
          /$defs/settle/properties                                         | settle
          /$defs/rule-of-rest/properties                                   | rule-of-rest
          /$defs/calibrate/properties                                      | calibrate
          /$defs/checks/properties                                         | checks
          /$defs/checks/properties/check-standard/properties               | check-standard
          /$defs/checks/properties/blank/properties                        | blank
          /$defs/checks/properties/duplicate/properties                    | duplicate
          /$defs/checks/properties/spike/properties                        | spike
          /$defs/low-end/oneOf/1/properties                                | low-end
          /$defs/compensation/oneOf/1/properties                           | isopotential
          /$defs/compensation/oneOf/2/properties                           | coefficient
          /$defs/activity/properties                                       | activity
          /$defs/interferent/oneOf/0/properties                            | known
          /$defs/interferent/oneOf/1/properties                            | at-most
          /$defs/recipe/oneOf/0/properties                                 | soil
          /$defs/recipe/oneOf/1/properties                                 | water
          /$defs/portion/oneOf/0/properties                                | scoops
          /$defs/portion/oneOf/1/properties                                | mass
          /$defs/extractant/properties                                     | extractant
          /$defs/moisture/properties                                       | moisture
          /$defs/dilution/properties                                       | dilution
          /$defs/poured/properties                                         | poured
          /$defs/adjusted/properties                                       | adjusted
          /$defs/broker/oneOf/2/properties                                 | remote
          /$defs/broker/oneOf/1/properties/embedded/properties             | embedded
          /$defs/care/oneOf/1/properties                                   | care
          /$defs/routine/oneOf/2/properties/at-rest/properties             | at-rest
          /$defs/published-table/properties                                | published table
          /$defs/own-table/properties                                      | own table
          /$defs/band/properties                                           | band
          /$defs/moves/oneOf/1/properties/by-itself/properties             | by-itself
          """)
  void theSchemaHasTheReadersKeys(String pointer, String reader) {
    List<String> inSchema = new ArrayList<>();
    TEXT.at(pointer).fieldNames().forEachRemaining(inSchema::add);

    assertThat(inSchema).containsExactlyElementsOf(keys(reader));
  }

  private static List<String> keys(String reader) {
    return switch (reader) {
      case "top" -> StationReader.KEYS;
      case "standard" -> StandardReader.KEYS;
      case "electrode" -> ProbeReader.ELECTRODE_KEYS;
      case "thermometer" -> ProbeReader.THERMOMETER_KEYS;
      case "link" -> LinkReader.KINDS;
      case "serial" -> SerialReader.KEYS;
      case "modbus" -> ModbusReader.KEYS;
      case "register" -> ModbusRegisterReader.KEYS;
      case "sdi12" -> Sdi12Reader.KEYS;
      case "mqtt" -> MqttReader.KEYS;
      case "recording" -> RecordingKeys.KEYS;
      case "columns" -> RecordingColumnsReader.KEYS;
      case "simulated" -> SimulatedReader.ELECTRODE_KEYS;
      case "made-up thermometer" -> SimulatedReader.THERMOMETER_KEYS;
      case "swing" -> SimulatedTemperatureReader.KEYS;
      case "visit" -> SimulatedVisitsReader.KEYS;
      case "fault" -> SimulatedFaultsReader.KEYS;
      case "fixed" -> TemperatureReader.FIXED_KEYS;
      case "probe" -> TemperatureReader.PROBE_KEYS;
      case "settle" -> SettleReader.KEYS;
      case "rule-of-rest" -> SettleRuleReader.KEYS;
      case "care" -> CareReader.KEYS;
      case "calibrate" -> CalibrateReader.KEYS;
      case "checks" -> ChecksReader.KEYS;
      case "check-standard" -> ChecksReader.STANDARD_KEYS;
      case "blank" -> ChecksReader.BLANK_KEYS;
      case "duplicate" -> ChecksReader.DUPLICATE_KEYS;
      case "spike" -> ChecksReader.SPIKE_KEYS;
      case "low-end" -> LowEndReader.FIXED_KEYS;
      case "isopotential" -> CompensationReader.ISOPOTENTIAL_KEYS;
      case "coefficient" -> CompensationReader.COEFFICIENT_KEYS;
      case "activity" -> ActivityReader.KEYS;
      case "known" -> InterferentsReader.KNOWN_KEYS;
      case "at-most" -> InterferentsReader.AT_MOST_KEYS;
      case "soil" -> RecipeReader.SOIL_KEYS;
      case "water" -> RecipeReader.WATER_KEYS;
      case "scoops" -> SoilPortionReader.SCOOP_KEYS;
      case "mass" -> SoilPortionReader.MASS_KEYS;
      case "extractant" -> RecipeReader.EXTRACTANT_KEYS;
      case "moisture" -> RecipeReader.MOISTURE_KEYS;
      case "dilution" -> RecipeReader.DILUTION_KEYS;
      case "poured" -> VesselReader.POURED_KEYS;
      case "adjusted" -> VesselReader.SHARE_KEYS;
      case "remote" -> BrokerReader.REMOTE_KEYS;
      case "embedded" -> BrokerReader.EMBEDDED_KEYS;
      case "at-rest" -> RoutineReader.AT_REST_KEYS;
      case "published table" -> PublishedTableReader.KEYS;
      case "own table" -> OwnTableReader.KEYS;
      case "band" -> BandsReader.KEYS;
      case "by-itself" -> MovesReader.KEYS;
      default -> throw new IllegalArgumentException(reader);
    };
  }

  @Test
  void theSchemaIsItselfSound() {
    Schema meta =
        SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
            .getSchema(
                com.networknt.schema.SchemaLocation.of(
                    SpecificationVersion.DRAFT_2020_12.getDialectId()));

    assertThat(meta.validate(TEXT)).isEmpty();
  }
}
