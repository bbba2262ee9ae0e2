package org.restpoint.acquisition.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.restpoint.acquisition.service.Stations;

/** What {@code check} says of when an electrode is at rest. */
class SettleWordsTest {

  private static final String STATION =
      WillowBench.with("{ recording: { file: any.csv } }", "settle: { %s, give-up-after: 10 min }");

  @TempDir private Path folder;

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          rule: consecutive, readings: 10 | 10 readings lie within 0.1 mV
          rule: consecutive, within: 2 %, for: 30 s | all readings of 30 s, 10 or more, lie within 2 % of the concentration
          rule: drift, below: 0.2 mV/min | the drift over 1 min plus its standard error is at most 0.2 mV/min with 5 readings or more
          rule: drift, below: 1 mV/min, over: 90 s, standard-errors: 0 | the drift over 90 s is at most 1 mV/min with 5 readings or more
          rule: drift, below: 1 mV/min, standard-errors: 2, readings-at-least: 9 | the drift over 1 min plus 2 standard errors is at most 1 mV/min with 9 readings or more
          within: 1 mV | its rest is foretold within 1 mV, learning how the electrode responds
          rule: forecast, learn: false | its rest is foretold within 1 mV
          rule: any-of, rules: [{ rule: forecast, within: 4 % }, { rule: consecutive, readings: 9 }] | its rest is foretold within 4 % of the concentration or 9 readings lie within 0.1 mV
          rule: any-of, rules: [{ rule: consecutive, readings: 5 }, { rule: consecutive, readings: 9, within: 1 mV }] | 5 readings lie within 0.1 mV or 9 readings lie within 1 mV
          rule: all-of, rules: [{ rule: consecutive, readings: 5 }, { rule: any-of, rules: [{ rule: consecutive, readings: 6 }, { rule: drift, below: 1 mV/min, standard-errors: 0 }] }] | 5 readings lie within 0.1 mV and (6 readings lie within 0.1 mV or the drift over 1 min is at most 1 mV/min with 5 readings or more)
          """)
  void everyRuleIsSaidInWords(String settle, String words) {
    assertThat(StationAccount.of(Stations.read(folder, STATION.formatted(settle))))
        .contains("            at rest when " + words + ", not before 0 s, given up after 10 min");
  }
}
