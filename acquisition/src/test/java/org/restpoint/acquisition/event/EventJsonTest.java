package org.restpoint.acquisition.event;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.restpoint.acquisition.event.Result.Amount;
import org.restpoint.acquisition.event.Result.CalibrationUsed;
import org.restpoint.acquisition.event.Result.Interference;
import org.restpoint.acquisition.event.Result.Outcome;
import org.restpoint.acquisition.event.Result.Reported;
import org.restpoint.acquisition.event.Result.Verification;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.uncertainty.BudgetLine;

class EventJsonTest {

  private static final Instant TIME = Instant.parse("2026-04-02T14:03:00.125Z");

  private static final Reason REASON = new Reason("busy", "it is busy", "Wait.");

  private static Result full() {
    ObjectNode sample = EventJson.mapper().createObjectNode();
    sample.put("field", "north 40").put("depthCentimetres", 30);
    return new Result(
        "no3-a-20260402T140300.125Z",
        1,
        "willow-bench",
        "no3-a",
        TIME,
        Outcome.SETTLED,
        OptionalDouble.of(213.40000000000003),
        OptionalDouble.of(0.1 / Math.sqrt(3)),
        OptionalDouble.of(21.7),
        12,
        11.125,
        "consecutive 10 within 0.1 mV",
        false,
        OptionalLong.of(12),
        OptionalDouble.empty(),
        OptionalDouble.of(0.1),
        OptionalDouble.of(-1e-300),
        OptionalDouble.of(0.02),
        Optional.of(
            new CalibrationUsed(
                "c", -57.1, 96.5, 201.2, 22.3, OptionalDouble.of(0.3), 61.5, Optional.of("d"))),
        Optional.of(new Amount(11.3, "mg/L", "as-N", 0.4, 2, "=")),
        Optional.of(new Reported(11.3, "mg/L", "as-N", 0.4, 2, "=", "solution as measured")),
        Optional.of(
            List.of(
                new BudgetLine(
                    "potential at rest",
                    OptionalDouble.of(213.4),
                    OptionalDouble.of(0.06),
                    Optional.of("mV"),
                    OptionalDouble.of(-0.45),
                    0.027,
                    1.8),
                new BudgetLine(
                    "calibration line",
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    Optional.empty(),
                    OptionalDouble.empty(),
                    0.2,
                    98.2))),
        Optional.of(List.of(new Interference("chloride", 0.05, OptionalDouble.of(0.4), true))),
        Optional.of(
            new Verification(
                CheckRole.DUPLICATE,
                Optional.of("mid"),
                Optional.of("no3-a-20260402T140000.000Z"),
                OptionalDouble.of(20),
                OptionalDouble.of(-8.7),
                OptionalDouble.of(56.5),
                OptionalDouble.of(2.5),
                OptionalDouble.of(55),
                OptionalDouble.of(3),
                "failed",
                "it is off")),
        Optional.of(
            new Preparation(
                "tile",
                "25 mL and 0.5 mL of adjustor",
                List.of(new Preparation.Figure("sample", 25, "mL", 0.03)))),
        Optional.of(sample),
        3,
        List.of("check-off"),
        List.of(REASON),
        Optional.of(
            List.of(
                new Guidance(
                    "well",
                    "Drinking water",
                    "above the limit",
                    Optional.of(
                        new Guidance.Rate(88, "lb/acre", OptionalDouble.of(4), "8 (21 - 10)")),
                    "a table",
                    "everywhere",
                    "Ask."))),
        Optional.of(new Result.Revised(TIME, "a check failed")),
        Result.CAUTION);
  }

  private static Result bare() {
    return new Result(
        "x",
        1,
        "willow-bench",
        "no3-a",
        TIME,
        Outcome.UNSETTLED,
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        0,
        0,
        "consecutive 10 within 0.1 mV",
        false,
        OptionalLong.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        9,
        List.of("no-readings"),
        List.of(REASON),
        Optional.empty(),
        Optional.empty(),
        Result.CAUTION);
  }

  private static Calibration calibration() {
    return new Calibration(
        "c",
        1,
        "willow-bench",
        "no3-a",
        TIME,
        Calibration.Verdict.REFUSED,
        List.of(REASON),
        List.of(
            new Calibration.Point(
                "low",
                5,
                "mg/L",
                "as-N",
                400.1,
                0.06,
                true,
                22,
                TIME,
                OptionalDouble.of(-0.02),
                OptionalDouble.of(0.7))),
        Optional.of("fitted"),
        OptionalDouble.of(-40.1),
        OptionalDouble.of(68.2),
        OptionalDouble.of(250),
        OptionalDouble.of(0.4),
        OptionalDouble.empty(),
        Optional.of(new Calibration.Limit(0.3, "mg/L", "as-N", 0.05)),
        OptionalDouble.of(22),
        List.of("standards-scatter"),
        List.of(new Reason("standards-scatter", "they scatter", "look for the one that is off")),
        List.of(new Calibration.Cause("air-bubble", "it jumped", "tap it off")));
  }

  private static Progress.Member member(Optional<List<Progress.Member>> members) {
    return new Progress.Member(
        "drift within 0.2 mV/min over 60 s",
        false,
        0.2,
        OptionalDouble.of(-0.7),
        OptionalDouble.empty(),
        OptionalDouble.of(212.9),
        OptionalDouble.of(0.3),
        members);
  }

  static List<Event> events() {
    return List.of(
        full(),
        bare(),
        calibration(),
        new Notice("n", "willow-bench", "no3-a", TIME, "gap", "no results", ""),
        new State(
            "willow-bench",
            "no3-a",
            TIME,
            "soaking",
            Optional.of(TIME),
            Optional.of(TIME),
            "then: measure",
            Optional.of("5")),
        new Progress(
            "willow-bench",
            "no3-a",
            TIME,
            3,
            2.5,
            213.4,
            0.2,
            OptionalDouble.of(-0.7),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalLong.empty(),
            Optional.empty()),
        new Progress(
            "willow-bench",
            "no3-a",
            TIME,
            3,
            2.5,
            213.4,
            0.2,
            OptionalDouble.of(-0.7),
            OptionalDouble.of(0.1),
            OptionalDouble.of(212.7),
            OptionalDouble.of(0.4),
            OptionalLong.of(3),
            Optional.of(List.of(member(Optional.empty()), member(Optional.of(List.of()))))),
        new RawReading(
            "willow-bench", "no3-a", TIME, OptionalDouble.of(213.4), OptionalDouble.empty()));
  }

  @ParameterizedTest
  @MethodSource("events")
  void anEventReadAgainIsTheSameToTheLastBit(Event event) throws JsonProcessingException {
    assertThat(EventJson.mapper().readValue(EventJson.write(event), Event.class)).isEqualTo(event);
  }

  @ParameterizedTest
  @MethodSource("events")
  void anEventIsOneLineThatSaysWhatItIs(Event event) {
    assertThat(EventJson.write(event)).startsWith("{\"event\":\"").doesNotContain("\n");
  }

  @Test
  void anAnswerReadAgainIsTheSame() throws JsonProcessingException {
    Answer answer =
        new Answer(
            Optional.of("7"),
            "willow-bench",
            "no3-a",
            TIME,
            "measure",
            Answer.Verdict.DONE,
            List.of(),
            Optional.of(full()));
    String json = EventJson.write(answer);
    assertThat(json).contains("\"do\":\"measure\"", "\"verdict\":\"done\"", "\"event\":\"result\"");
    assertThat(EventJson.mapper().readValue(json, Answer.class)).isEqualTo(answer);
  }

  @Test
  void whatIsAbsentIsLeftOutAndTimesAreIso8601() {
    assertThat(EventJson.write(bare()))
        .contains("\"time\":\"2026-04-02T14:03:00.125Z\"")
        .contains("\"outcome\":\"unsettled\"")
        .contains("\"quality\":9")
        .doesNotContain("concentration", "reported", "null", "sample", "\"millivolts\"");
  }

  @Test
  void anEventOfAnUnknownKindIsNotRead() {
    assertThatThrownBy(() -> EventJson.mapper().readValue("{\"event\":\"song\"}", Event.class))
        .isInstanceOf(JsonProcessingException.class);
  }
}
