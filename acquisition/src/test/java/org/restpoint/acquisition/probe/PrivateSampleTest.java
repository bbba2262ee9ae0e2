package org.restpoint.acquisition.probe;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.restpoint.acquisition.event.Answer;
import org.restpoint.acquisition.event.Event;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.event.State;

/** A sample that nobody but the caller hears of. */
class PrivateSampleTest {

  private static final String PRIVATE =
      "{\"id\":\"7\",\"do\":\"measure\",\"sample\":\"hush\",\"private\":true}";

  private static Bench ready() {
    return Bench.of(Setup.nitrate()).calibrate("low").calibrate("high").forgetWhatWasSaid();
  }

  @Test
  void onlyTheAnswerHasItsResult() {
    Bench bench = ready().tell(PRIVATE).read(3, 190);
    assertThat(bench.confided()).hasSize(1);
    Answer answer = bench.confided().get(0);
    assertThat(answer.id()).contains("7");
    assertThat(((Result) answer.outcome().orElseThrow()).outcome())
        .isEqualTo(Result.Outcome.SETTLED);
    assertThat(bench.all(Event.class)).hasOnlyElementsOfType(State.class);
    assertThat(bench.said().toString()).doesNotContain("hush");
    assertThat(bench.remembered().toString()).doesNotContain("hush");
  }

  @Test
  void itsReadingsAreWithheldUntilTheElectrodeStandsElsewhere() {
    Bench bench = ready();
    assertThat(bench.withholds()).isFalse();
    bench.tell(PRIVATE);
    assertThat(bench.withholds()).isTrue();
    bench.read(3, 190).pass(Duration.ofHours(1));
    assertThat(bench.withholds()).isTrue();
    assertThat(bench.restarted(Setup.nitrate(), Duration.ofHours(1)).withholds()).isTrue();
    bench.tell("{\"do\":\"rinsed\"}");
    assertThat(bench.withholds()).isFalse();
  }

  @Test
  void oneThatIsCancelledStillStandsInTheSample() {
    Bench bench = ready().tell(PRIVATE).tell("{\"do\":\"cancel\"}");
    assertThat(bench.withholds()).isTrue();
    assertThat(bench.measure(11).withholds()).isFalse();
  }

  @Test
  void aRefusalIsTheCallersAlone() {
    Bench bench = Bench.of(Setup.nitrate()).forgetWhatWasSaid().tell(PRIVATE);
    assertThat(bench.said()).isEmpty();
    assertThat(bench.confided().get(0).reasons().get(0).code()).isEqualTo("not-calibrated");
    assertThat(bench.withholds()).isFalse();
  }

  @Test
  void nothingIsLearntFromIt() {
    Bench taught = ready().measure(11);
    Bench hushed = ready().measure(11).tell(PRIVATE).read(3, 190);
    assertThat(hushed.remembered().response()).isEqualTo(taught.remembered().response());
  }
}
