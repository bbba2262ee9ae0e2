package org.restpoint.acquisition.records;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.restpoint.adapters.journal.SpanQuery;

/** A day at the bench in a few lines. */
class SummaryWriterTest {

  private static final String SHORT =
      "{\"event\":\"result\",\"outcome\":\"%s\",\"flags\":[%s],\"sample\":{\"number\":\"%s\",\"kind\":\"tile water\"}%s}";

  @TempDir private Path folder;

  private String summary(ZoneId zone, boolean csv) {
    BenchJournal journal =
        new BenchJournal(folder)
            .instruction(
                "1", "2026-04-02T13:00:00Z", "{\"do\":\"measure\",\"sample\":{\"number\":\"S-1\"}}")
            .instruction("2", "2026-04-02T13:01:00Z", "{\"do\":\"measure\",\"sample\":\"S-9\"}")
            .instruction(
                "4",
                "2026-04-02T13:03:00Z",
                "{\"do\":\"batch\",\"cups\":[{\"cup\":\"1\",\"standard\":\"mid\"},{\"cup\":\"2\",\"sample\":\"S-8\"},{\"cup\":\"3\",\"sample\":{\"number\":\"S-1\"}}]}")
            .instruction("3", "2026-04-02T13:02:00Z", "{\"do\":\"calibrate\",\"standard\":\"mid\"}")
            .entry("calibration", "c-1", 1, "2026-04-02T13:59:00Z", "{\"verdict\":\"accepted\"}")
            .entry("calibration", "c-2", 1, "2026-04-02T13:59:30Z", "{\"verdict\":\"refused\"}")
            .number(
                "r-1",
                1,
                "2026-04-02T14:00:00Z",
                "20.5",
                "{\"number\":\"S-1\",\"kind\":\"tile water\"}")
            .number(
                "r-2",
                1,
                "2026-04-02T14:01:00Z",
                "10.123456",
                "{\"number\":\"S-2\",\"kind\":\"tile water\"}")
            .entry(
                "result",
                "r-2",
                2,
                "2026-04-02T14:01:00Z",
                SHORT.formatted("settled", "\"creeping\"", "S-2", amount("10.123456", "=")))
            .entry(
                "result",
                "r-3",
                1,
                "2026-04-02T14:02:00Z",
                SHORT.formatted("settled", "\"below-range\"", "S-3", amount("0.5", "<")))
            .entry(
                "result",
                "r-4",
                1,
                "2026-04-02T14:03:00Z",
                SHORT.formatted("unsettled", "\"unsettled\"", "S-4", ""))
            .entry(
                "result",
                "r-5",
                1,
                "2026-04-02T14:04:00Z",
                "{\"event\":\"result\",\"outcome\":\"settled\",\"flags\":[\"check-off\"],\"verification\":{\"role\":\"check-standard\",\"verdict\":\"failed\"}}")
            .number("r-6", 1, "2026-04-03T02:00:00Z", "7", "{\"number\":\"S-3\"}");
    return journal.written(
        (reader, out) -> new SummaryWriter(reader, out).write(SpanQuery.all(), zone, csv));
  }

  private static String amount(String value, String relation) {
    return ",\"reported\":{\"value\":%s,\"unit\":\"mg/L\",\"basis\":\"as-N\",\"relation\":\"%s\",\"kind\":\"solution as measured\"}"
        .formatted(value, relation);
  }

  @Test
  void forAPerson() {
    assertThat(summary(ZoneOffset.UTC, false))
        .isEqualTo(
            """
            2026-04-02  no3-a
              results    3 settled (1 passed, 2 flagged), 1 unsettled, 0 refused
              flags      1 below-range, 1 creeping, 1 unsettled
              standards  1 accepted, 1 refused
              checks     1 check-standard failed
              tile water, solution as measured 3 in mg/L as-N: lowest <0.5, median 10.12, highest 20.5

            2026-04-03  no3-a
              results    1 settled (1 passed, 0 flagged), 0 unsettled, 0 refused
              flags      none
              standards  0 accepted, 0 refused
              checks     none
              solution as measured 1 in mg/L as-N: lowest 7, median 7, highest 7

            samples without a result: 3
              S-9        2026-04-02 no3-a: not read
              S-8        2026-04-02 no3-a: not read
              S-4        2026-04-02 no3-a: unsettled
            samples with flagged results alone: 1
              S-2        2026-04-02 no3-a: creeping
            """);
  }

  @Test
  void asATableWithARowForEachFigure() {
    assertThat(summary(ZoneOffset.UTC, true).lines())
        .startsWith("day,probe,what,of,value,unit,basis", "2026-04-02,no3-a,results,settled,3,,")
        .contains(
            "2026-04-02,no3-a,flags,creeping,1,,",
            "2026-04-02,no3-a,lowest,\"tile water, solution as measured\",<0.5,mg/L,as-N",
            "2026-04-02,no3-a,median,\"tile water, solution as measured\",10.123456,mg/L,as-N",
            "2026-04-02,no3-a,samples without a result,S-4,unsettled,,");
  }

  @Test
  void anEveningInAmericaIsStillThatDay() {
    assertThat(summary(ZoneId.of("America/Chicago"), false))
        .contains("4 settled")
        .doesNotContain("2026-04-03");
  }

  @ParameterizedTest
  @CsvSource({
    "1 2 3, 2.0",
    "1 2 3 4, 2.5",
    "<1 2, <1.0",
    "<1 <1 3 4, <1.0",
    "1 2 >5, 2.0",
    "1 >5, 1.0"
  })
  void aMedianIsNeverMadeOfALimit(String numbers, String median) {
    List<Told> told =
        Stream.of(numbers.split(" ", -1))
            .map(
                text ->
                    text.matches("[<>].*")
                        ? new Told(Double.parseDouble(text.substring(1)), text.substring(0, 1))
                        : new Told(Double.parseDouble(text), "="))
            .sorted()
            .toList();
    assertThat(Told.median(told).exactly()).isEqualTo(median);
  }
}
