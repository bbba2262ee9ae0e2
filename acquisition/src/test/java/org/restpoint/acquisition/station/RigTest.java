package org.restpoint.acquisition.station;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.restpoint.acquisition.event.Answer;
import org.restpoint.acquisition.event.Answer.Verdict;
import org.restpoint.acquisition.event.BatchSummary;
import org.restpoint.config.station.Moves;
import org.restpoint.config.station.TemperatureSource;

/**
 * A rig goes through sixty cups in which much goes wrong. What has to come of each cup stands in
 * {@code rig/cups.csv}, worked out by hand.
 */
class RigTest {

  private static final List<CupRow> ROWS = CupRow.all();
  private static final String LIST =
      ROWS.stream()
          .map(CupRow::line)
          .collect(Collectors.joining(",", "{'do':'batch','id':'list','cups':[", "]}"));

  private int word;

  private static RigBench bench(Moves moves) {
    return new RigBench(
        new Stations()
            .moves(moves)
            .electrode(RigBench.PROBE, new TemperatureSource.Fixed(22, 1))
            .station());
  }

  private static Moves seenInAir() {
    return new Moves.ByItself(
        OptionalDouble.empty(),
        OptionalDouble.of(20),
        3,
        10,
        Duration.ofSeconds(5),
        Duration.ofMinutes(3));
  }

  private Answer say(RigBench bench, String fields) {
    word++;
    List<Answer> answers = bench.tell("{'id':'w%d',%s}".formatted(word, fields));
    return answers.get(answers.size() - 1);
  }

  private Answer next(RigBench bench) {
    return say(bench, "'do':'next'");
  }

  private Answer inPlace(RigBench bench) {
    return say(bench, "'do':'in-place'");
  }

  private static void assertWhatTheTableSays(BatchSummary summary) {
    assertThat(summary.left()).isEmpty();
    List<String> found = new ArrayList<>();
    List<String> expected = new ArrayList<>();
    for (int i = 0; i < ROWS.size(); i++) {
      found.add(CupRow.words(summary.cups().get(i), ROWS.get(i)));
      expected.add(ROWS.get(i).words());
    }
    assertThat(found).containsExactlyElementsOf(expected);
  }

  private static void assertRefused(Answer answer, String code) {
    assertThat(answer.verdict()).isEqualTo(Verdict.REFUSED);
    assertThat(answer.reasons().get(0).code()).isEqualTo(code);
  }

  @Test
  void byWords() {
    RigBench bench = bench(new Moves.Told());
    assertRefused(next(bench), "batch-none");
    assertThat(bench.tell(LIST)).extracting(Answer::verdict).contains(Verdict.DONE);
    assertRefused(inPlace(bench), "next-expected");
    assertRefused(say(bench, "'do':'measure'"), "batch-underway");
    Answer next = next(bench);
    for (CupRow row : ROWS) {
      assertThat(next.verdict()).isEqualTo(Verdict.DONE);
      assertThat(next.cup().orElseThrow().path("cup").asText()).isEqualTo(row.cup());
      assertThat(bench.state().cup()).contains(row.cup());
      assertThat(bench.state().nextStep()).startsWith("Move the electrode to cup " + row.cup());
      bench.air(10);
      next = readByWords(bench, row);
    }
    assertThat(next.cup()).isEmpty();
    Answer done = say(bench, "'do':'done'");
    assertWhatTheTableSays((BatchSummary) done.outcome().orElseThrow());
    assertThat(bench.last(BatchSummary.class)).isEqualTo(done.outcome().orElseThrow());
    assertThat(bench.state().cup()).isEmpty();
    assertThat(bench.notices())
        .containsExactly(
            "batch-none",
            "next-expected",
            "batch-underway",
            "fresh-standard",
            "busy",
            "cup-not-next",
            "interrupted",
            "fresh-standard",
            "cup-not-read",
            "cup-skipped",
            "cup-not-read",
            "cup-skipped");
  }

  /** What has to come of it stands in the table; the answer says which cup comes next. */
  private Answer readByWords(RigBench bench, CupRow row) {
    switch (row.fault()) {
      case "contaminated" -> {
        read(bench, 40);
        assertThat(bench.state().nextStep()).startsWith("Put a fresh portion of the standard");
        read(bench, row.milligramsPerLitre());
      }
      case "spoilt" -> {
        read(bench, 40);
        return skipping(bench);
      }
      case "pulled" -> {
        inPlace(bench);
        bench.stand(row.milligramsPerLitre(), 2).air(5);
        assertRefused(next(bench), "busy");
        say(bench, "'do':'cancel'");
        read(bench, row.milligramsPerLitre());
      }
      case "restless" -> {
        inPlace(bench);
        bench.restless(row.milligramsPerLitre(), 40);
        assertThat(bench.state().nextStep()).startsWith("Nothing came of cup 17");
      }
      case "message" -> {
        List<Answer> first = List.of(bench.answer());
        assertThat(bench.tell("{'id':'w%d','do':'next'}".formatted(word)))
            .endsWith(first.get(0))
            .hasSize(2);
        assertRefused(say(bench, "'do':'in-place','cup':'21'"), "cup-not-next");
        read(bench, row.milligramsPerLitre());
        assertThat(bench.tell("{'id':'w%d','do':'in-place'}".formatted(word)))
            .extracting(Answer::verdict)
            .containsExactly(Verdict.ACCEPTED, Verdict.DONE);
      }
      case "restart" -> {
        inPlace(bench);
        bench.stand(row.milligramsPerLitre(), 2).restarted();
        assertThat(bench.state().nextStep())
            .isEqualTo("Move the electrode to cup 25 (sample %s), then: in-place", row.name());
        read(bench, row.milligramsPerLitre());
      }
      case "skipped" -> {
        return skipping(bench);
      }
      default -> read(bench, row.milligramsPerLitre());
    }
    return next(bench);
  }

  private Answer skipping(RigBench bench) {
    assertRefused(next(bench), "cup-not-read");
    return say(bench, "'do':'next','skip':true");
  }

  private void read(RigBench bench, double milligramsPerLitre) {
    inPlace(bench);
    bench.stand(milligramsPerLitre, 30);
  }

  @Test
  void byTheMovesItSees() {
    RigBench bench = bench(seenInAir());
    bench.tell(LIST);
    assertThat(bench.state().nextStep())
        .isEqualTo("Move the electrode to cup 1 (standard low), then: in-place");
    bench.air(10);
    inPlace(bench);
    for (CupRow row : ROWS) {
      boolean refusedAtOnce = row.flags().contains("calibration-refused");
      assertThat(bench.state().cup()).contains(refusedAtOnce ? "34" : row.cup());
      readByItself(bench, row);
      bench.air(row.cup().equals("44") || row.fault().equals("skipped") ? 0 : 10);
    }
    assertThat(bench.state().nextStep()).isEqualTo("All cups have come; say: done");
    Answer done = say(bench, "'do':'done'");
    assertWhatTheTableSays((BatchSummary) done.outcome().orElseThrow());
    assertThat(bench.notices())
        .containsExactly(
            "fresh-standard",
            "pulled-early",
            "interrupted",
            "fresh-standard",
            "cup-skipped",
            "cup-skipped",
            "move-not-seen");
  }

  private void readByItself(RigBench bench, CupRow row) {
    switch (row.fault()) {
      case "contaminated" -> {
        bench.stand(40, 40).air(10).stand(row.milligramsPerLitre(), 40);
        assertThat(bench.state().cup()).contains(row.cup());
        read(bench, row.milligramsPerLitre());
      }
      case "spoilt" -> {
        bench.stand(40, 40);
        say(bench, "'do':'next','skip':true");
        bench.air(10);
        inPlace(bench);
      }
      case "pulled" -> {
        bench.standUntilRead(row.milligramsPerLitre()).air(10).stand(row.milligramsPerLitre(), 20);
        assertThat(bench.state().nextStep()).startsWith("Move the electrode to cup 12");
        read(bench, row.milligramsPerLitre());
      }
      case "restless" ->
          bench.stand(row.milligramsPerLitre(), 1).restless(row.milligramsPerLitre(), 60);
      case "restart" -> {
        bench.standUntilRead(row.milligramsPerLitre()).restarted();
        read(bench, row.milligramsPerLitre());
      }
      case "skipped" -> {
        say(bench, "'do':'next','skip':true");
        bench.air(10);
        inPlace(bench);
      }
      case "unseen" -> {
        bench.stand(row.milligramsPerLitre(), 200);
        read(bench, row.milligramsPerLitre());
      }
      default -> bench.stand(row.milligramsPerLitre(), 50);
    }
  }
}
