package org.restpoint.acquisition.demo;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonProcessingException;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.acquisition.event.Progress;
import org.restpoint.acquisition.event.Result;

class SentencesTest {

  private static final String WHO =
      "\"station\":\"willow-bench\",\"probe\":\"no3-a\",\"time\":\"2026-04-02T14:06:25Z\",";

  private static <T> T read(String json, Class<T> kind) {
    try {
      return EventJson.mapper().readValue(json, kind);
    } catch (JsonProcessingException e) {
      throw new AssertionError(e);
    }
  }

  private static String result(boolean forecast, OptionalDouble readMillivolts) {
    return Sentences.result(
        read(
            """
            {"event":"result","id":"x","revision":1,%s"outcome":"settled","millivolts":183.28,
             "millivoltsUncertainty":0.38,"celsius":25,"readings":27,"elapsedSeconds":26.4,
             "rule":"r","forecast":%s,"responseReadings":5,"concentration":{"value":20,"unit":"mg/L","basis":"as-N",
             "uncertainty":0.6,"coverage":2,"relation":"="},"quality":1,"flags":[],"reasons":[],
             "caution":"c"}
            """
                .formatted(WHO, forecast),
            Result.class),
        readMillivolts);
  }

  @Test
  void aForecastIsForetoldAndNotAtRest() {
    OptionalDouble read = OptionalDouble.of(184.1);
    String rest = " after 26 s, 25.0 \u00b0C. RESULT 20.00 \u00b1 0.60 mg/L as-N,";
    assertThat(result(true, read))
        .startsWith(
            "Foretold to rest at 183.28 mV from this and the 5 readings before; it read 184.10 mV"
                + rest);
    assertThat(result(true, OptionalDouble.empty()))
        .startsWith("Foretold to rest at 183.28 mV from this and the 5 readings before" + rest);
    assertThat(result(false, read)).startsWith("At rest at 183.28 mV" + rest);
  }

  @Test
  void progressSaysWhereThePotentialIsGoingWhereThatIsForeseen() {
    String progress =
        "{\"event\":\"settling\","
            + WHO
            + "\"readings\":9,\"elapsedSeconds\":9,"
            + "\"latestMillivolts\":190.5,\"spreadMillivolts\":1%s}";
    assertThat(Sentences.progress(read(progress.formatted(""), Progress.class)))
        .isEqualTo("  190.50 mV");
    String forecast = ",\"forecastMillivolts\":183.5,\"forecastUncertaintyMillivolts\":0.75";
    assertThat(Sentences.progress(read(progress.formatted(forecast), Progress.class)))
        .isEqualTo("  190.50 mV, foretold at 183.50 \u00b1 0.75 mV (k = 1)");
  }

  @ParameterizedTest
  @CsvSource({
    "24.5149, 0.4496, 24.51 \u00b1 0.45",
    "12.666, 0.0996, 12.67 \u00b1 0.10",
    "100.2, 2.34, 100.2 \u00b1 2.3",
    "0.00123, 0.000456, 0.00123 \u00b1 0.00046",
    "1234.5, 123.4, 1234 \u00b1 120",
    "3.2, 0, 3 \u00b1 0",
  })
  void aValueHasAsManyDecimalsAsTwoDigitsOfItsUncertainty(
      double value, double uncertainty, String words) {
    assertThat(Sentences.amount(new Result.Amount(value, "mg/L", "as-N", uncertainty, 2, "=")))
        .isEqualTo(words);
  }

  @Test
  void flagsAreNamedOneOrMany() {
    assertThat(Sentences.flags(List.of())).isEmpty();
    assertThat(Sentences.flags(List.of("standard-due"))).isEqualTo("; flag standard-due");
    assertThat(Sentences.flags(List.of("one-point", "ideal-slope")))
        .isEqualTo("; flags one-point, ideal-slope");
  }
}
