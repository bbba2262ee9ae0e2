package org.restpoint.acquisition.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.acquisition.service.Stations;

/** What {@code check} says of an electrode's standards and of its moves. */
class StationAccountTest {

  private static final String STATION =
      """
      station: willow-bench
      broker: embedded
      standards:
        low: { concentration: 5 mg/L, basis: as-N }
        high: { concentration: 50 mg/L, basis: as-N }
      probes:
        no3-a:
          analyte: nitrate
          basis: as-N
          link: { recording: { file: any.csv } }
          temperature: { fixed: 22.0 Cel }
          settle: { rule: consecutive, give-up-after: 10 min }
          calibrate: { standards: [low, high], %s }
          %s
      """;

  @TempDir private Path folder;

  private String account(String calibrate, String more) {
    return String.join(
        "\n", StationAccount.of(Stations.read(folder, STATION.formatted(calibrate, more))));
  }

  @Test
  void whenAStandardIsRefusedIsSaidAndWhatElseIsAskedOfThem() {
    assertThat(account("valid-for: 12 h", ""))
        .contains("a standard is refused that reads more than 6 mV from what is expected of it")
        .doesNotContain("slope is due")
        .doesNotContain("said again")
        .doesNotContain("another cup");
    assertThat(
            account(
                "restandardize: low, every: sample, bracket: true, slope-every: 7 d, moved-within: 8 %",
                ""))
        .contains(
            "again with low, a standard before every sample",
            "a standard is refused that reads more than 8 % of its concentration from",
            "the slope is due to be measured every 168 h",
            "results between two readings of its standard are said again with the offset then");
  }

  @Test
  void howAMoveToAnotherCupIsSeenIsSaid() {
    assertThat(
            account(
                "valid-for: 12 h",
                "moves: { by-itself: { out-of-solution: 20 mV, step: 8 mV, not-seen-after: 3 min } }"))
        .contains(
            "a move to another cup is seen by swings of 20 mV in the air or by a step of 8 mV;"
                + " told when none is seen for 3 min");
  }
}
