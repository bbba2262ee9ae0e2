package org.restpoint.config.file;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.config.station.ChosenTable;
import org.restpoint.config.station.Quantity;
import org.restpoint.config.station.TableSettings;
import org.restpoint.config.station.TableSettings.Band;
import org.restpoint.config.station.TableSettings.BulkDensity;
import org.restpoint.config.station.TableSettings.Critical;
import org.restpoint.config.station.TableSettings.Layer;
import org.restpoint.config.station.TableSettings.Own;
import org.restpoint.config.station.TableSettings.Published;

/** Which tables a file chooses, and for what. */
class GuidanceFileTest {

  @TempDir Path folder;

  private Map<String, ChosenTable> guidance(String text) {
    return new Fixture(folder).understood(text).guidance();
  }

  private TableSettings table(String text, String name) {
    return Optional.ofNullable(guidance(text).get(name)).orElseThrow().table();
  }

  @Test
  void tablesThatComeWithTheProgramAreChosenWithTheirFigures() {
    Map<String, ChosenTable> chosen = guidance(Fixture.example("guidance.yaml"));

    assertThat(chosen.keySet()).containsExactly("well", "sidedress", "autumn", "drains", "subsoil");
    assertThat(chosen)
        .containsEntry(
            "well",
            new ChosenTable(
                "well",
                List.of("well water"),
                new Published("us-drinking-water", Optional.empty(), Optional.empty())))
        .containsEntry(
            "sidedress",
            new ChosenTable(
                "sidedress",
                List.of("soil"),
                new Published(
                    "late-spring-soil",
                    Optional.of(new Critical(21, "wet spring, 25 % above normal")),
                    Optional.empty())))
        .containsEntry(
            "autumn",
            new ChosenTable(
                "autumn",
                List.of("soil"),
                new Published(
                    "autumn-residual-soil",
                    Optional.empty(),
                    Optional.of(new BulkDensity(1.3, 0.08)))));
  }

  @Test
  void aTableOfOnesOwnIsWrittenOut() {
    ChosenTable drains = guidance(Fixture.example("guidance.yaml")).get("drains");

    assertThat(drains)
        .isEqualTo(
            new ChosenTable(
                "drains",
                List.of("tile water", "surface water"),
                new Own(
                    "Nitrate in tile drains",
                    "an invented leaflet, 2026",
                    "Willow county",
                    "spring flow",
                    Optional.empty(),
                    Optional.of(LocalDate.of(2027, 12, 31)),
                    "nitrate",
                    Optional.of("as-N"),
                    List.of(
                        new Band(
                            Optional.of(new Quantity(5, "mg/L")),
                            "little is lost",
                            Optional.empty()),
                        new Band(
                            Optional.of(new Quantity(20, "mg/L")),
                            "as usual under row crops",
                            Optional.of("Ask before changing rates.")),
                        new Band(
                            Optional.empty(), "more is lost than needed", Optional.empty())))));
  }

  @Test
  void aLayerOfSoilAndItsBasisAreTaken() {
    Own subsoil = (Own) table(Fixture.example("guidance.yaml"), "subsoil");

    assertThat(subsoil.layer()).contains(new Layer(60, 90));
    assertThat(subsoil.ofSoil()).isTrue();
    assertThat(subsoil.basis()).contains("as-ion");
  }

  @Test
  void bandsOfPhHaveTheirLimitsInPh() {
    String text =
        Fixture.changed(
                "guidance.yaml",
                "basis: as-N¶    bands:".replace('¶', '\n'),
                "analyte: hydrogen\n    bands:")
            .replace("5 mg/L, says", "5 pH, says")
            .replace("20 mg/L, says", "8 pH, says");

    assertThat(((Own) table(text, "drains")).bands().get(1).below())
        .contains(new Quantity(8, Quantity.PH));
  }

  @Test
  void aFileThatChoosesNoTableHasNone() {
    assertThat(guidance(Fixture.example("bench.yaml"))).isEmpty();
  }

  @Test
  void everythingThatIsWrongWithATableIsToldAtOnce() {
    String text =
        """
        station: a
        broker: embedded
        probes:
          t: { measures: temperature, link: { mqtt: { topic: t, celsius: /t } } }
        guidance:
          none: {}
          own:
            title: 17
            of: dry soil
            for: [well water]
            basis: as-P
            bands: [{ below: 10 mg/L }, { says: much, below: 3 mg/kg }]
          Ö: 3
        """;
    assertThat(new Fixture(folder).problems(text))
        .hasSizeGreaterThan(9)
        .anyMatch(told -> told.startsWith("guidance.none.for (line 6)"))
        .anyMatch(told -> told.startsWith("guidance.own.title (line 8)"))
        .anyMatch(told -> told.startsWith("guidance.own.source (line 7)"))
        .anyMatch(told -> told.startsWith("guidance.own.for[0] (line 10)"))
        .anyMatch(told -> told.startsWith("guidance.own.bands[0].says (line 12)"))
        .anyMatch(told -> told.startsWith("guidance.own.bands[1].below (line 12)"))
        .anyMatch(told -> told.startsWith("guidance.Ö (line 13)"));
  }
}
