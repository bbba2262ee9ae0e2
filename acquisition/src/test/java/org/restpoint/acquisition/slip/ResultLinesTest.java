package org.restpoint.acquisition.slip;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.acquisition.event.Result;

/** Results among what other commands print. */
class ResultLinesTest {

  private static final String WATER = EventJson.write(Slips.result("water"));
  private static final String UNSETTLED = EventJson.write(Slips.result("unsettled"));
  private static final String ACCEPTED =
      "{\"station\":\"willow-bench\",\"probe\":\"no3-a\",\"time\":\"2026-04-02T14:06:00Z\",\"do\":\"measure\",\"verdict\":\"accepted\",\"reasons\":[]}";

  private static Optional<Result> last(String... lines) {
    return ResultLines.last(Stream.of(lines), Optional.empty());
  }

  private static String done(String outcome) {
    return ACCEPTED
        .replace("accepted", "done")
        .replace("\"reasons\":[]", "\"reasons\":[],\"outcome\":" + outcome);
  }

  @Test
  void theOutcomeOfAnAnswerIsAResult() {
    assertThat(last(ACCEPTED, done(WATER))).contains(Slips.result("water"));
  }

  @Test
  void aLineMayBeTheResultItself() {
    assertThat(last("listening", "", WATER, "[1]", "{\"event\":\"notice\",\"id\":\"n\"}"))
        .contains(Slips.result("water"));
  }

  @Test
  void theLastCountsAlsoWhereItIsWithoutANumber() {
    assertThat(last(WATER, done(UNSETTLED))).contains(Slips.result("unsettled"));
    assertThat(
            ResultLines.last(
                Stream.of(WATER, UNSETTLED), Optional.of("no3-a-20260402T140625.000Z")))
        .contains(Slips.result("water"));
  }

  @Test
  void aCalibrationIsNone() {
    assertThat(last(done("{\"event\":\"calibration\",\"id\":\"c\"}"))).isEmpty();
    assertThat(last()).isEmpty();
  }

  @Test
  void whatALaterVersionAddsIsPassedOver() {
    assertThat(last(WATER.replace("\"revision\":1", "\"revision\":1,\"novelty\":{\"a\":1}")))
        .contains(Slips.result("water"));
  }

  @Test
  void aResultThatIsNotWholeIsToldByWhatItLacks() {
    assertThatThrownBy(() -> last("{\"event\":\"result\",\"id\":\"r-1\",\"flags\":[]}"))
        .hasMessageStartingWith("the result r-1 lacks revision, station, probe, time, outcome");
    assertThatThrownBy(() -> last(WATER.replace("\"settled\"", "\"set\"")))
        .hasMessageStartingWith("the result no3-a-20260402T140625.000Z is not one that");
  }
}
