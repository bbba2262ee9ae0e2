package org.restpoint.acquisition.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.acquisition.service.Stations;

/** What {@code check} says of the tables that were chosen. */
class GuidanceAccountTest {

  private static final String STATION =
      """
      station: willow-bench
      broker: embedded
      probes:
        t: { measures: temperature, link: { recording: { file: any.csv } } }
      guidance:
        well: { table: us-drinking-water, for: [well water] }
        sidedress: { table: late-spring-soil, for: [soil], critical: 21 mg/kg, because: wet spring }
        autumn: { table: autumn-residual-soil, for: [soil], bulk-density: 1.3 g/cm3 }
        drains:
          title: Nitrate in drains
          source: an invented leaflet
          region: Willow county
          season: spring
          valid-until: 2030-01-31
          of: water
          for: [tile water, surface water]
          basis: as-N
          bands: [{ below: 10 mg/L, says: usual }, { says: much }]
      """;

  @TempDir private Path folder;

  @Test
  void eachTableIsSaidWithWhatItIsForItsSourceAndItsScope() {
    List<String> lines =
        StationAccount.of(Stations.read(folder, STATION)).stream()
            .dropWhile(line -> !line.startsWith("guidance"))
            .toList();
    assertThat(lines).hasSize(12);
    assertThat(lines)
        .contains(
            "guidance  well: Nitrate in drinking water, limit of the United States; for samples of"
                + " well water",
            "guidance  drains: Nitrate in drains; for samples of tile water, surface water",
            "            source: an invented leaflet",
            "            holds for: Willow county; spring; valid until 2030-01-31");
    assertThat(lines.get(4))
        .endsWith("critical number 21 mg/kg instead of 25, because: wet spring");
    assertThat(lines.get(5))
        .startsWith(
            "            holds for: Iowa; late spring, corn 6 to 12 inches tall; soil from 0");
  }
}
