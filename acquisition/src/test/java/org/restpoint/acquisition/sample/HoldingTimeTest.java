package org.restpoint.acquisition.sample;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.ValueSource;

class HoldingTimeTest {

  private static final Instant TAKEN = Instant.parse("2026-04-02T14:00:00Z");

  private static Sample sample(String... fields) {
    Map<String, String> told = new LinkedHashMap<>();
    told.put("number", "W-1");
    told.put("taken", TAKEN.toString());
    for (int i = 0; i < fields.length; i += 2) {
      told.put(fields[i], fields[i + 1]);
    }
    return Sample.of(SampleReader.read(told));
  }

  private static List<String> after(String span, String ion, String... fields) {
    return HoldingTime.flags(ion, sample(fields), TAKEN.plus(Duration.parse(span)));
  }

  @ParameterizedTest
  @CsvFileSource(resources = "/published/holding-times.csv", numLinesToSkip = 4)
  void aWaterKeepsUpToItsLimitAndNoLonger(String ion, double hours, boolean cooled) {
    Instant limit = TAKEN.plusMillis(Math.round(hours * 3_600_000));
    Sample water = sample("kind", "tile water");
    assertThat(HoldingTime.of(ion).orElseThrow().cool()).isEqualTo(cooled);
    assertThat(HoldingTime.flags(ion, water, limit)).isEmpty();
    assertThat(HoldingTime.flags(ion, water, limit.plusMillis(1))).containsExactly("held-too-long");
  }

  @Test
  void whatIsToBeCooledIsWarmAboveSixDegrees() {
    String[] kind = {"kind", "well water"};
    assertThat(after("PT1H", "nitrate", with(kind, "keptCelsius", "6"))).isEmpty();
    assertThat(after("PT1H", "nitrate", with(kind, "keptCelsius", "6.01")))
        .containsExactly("held-warm");
    assertThat(after("PT1H", "nitrate", with(kind, "cooled", "false")))
        .containsExactly("held-warm");
    assertThat(after("PT1H", "nitrate", with(kind, "cooled", "true"))).isEmpty();
    assertThat(after("PT1H", "chloride", with(kind, "keptCelsius", "25"))).isEmpty();
    assertThat(after("PT48H0.001S", "nitrate", with(kind, "keptCelsius", "25")))
        .containsExactly("held-too-long", "held-warm");
  }

  @Test
  void aTemperatureCountsMoreThanAWord() {
    assertThat(after("PT1H", "nitrate", "kind", "well water", "cooled", "true", "keptCelsius", "9"))
        .containsExactly("held-warm");
    assertThat(
            after("PT1H", "nitrate", "kind", "well water", "cooled", "false", "keptCelsius", "5"))
        .isEmpty();
  }

  @Test
  void whatIsReadWithinAQuarterOfAnHourNeedsNoIce() {
    assertThat(after("PT15M", "nitrate", "kind", "surface water", "cooled", "false")).isEmpty();
    assertThat(after("PT15M0.001S", "nitrate", "kind", "surface water", "cooled", "false"))
        .containsExactly("held-warm");
  }

  @Test
  void aWaterOfWhichNobodySaysWhenItWasTakenIsToldAsSuch() {
    Map<String, String> told = Map.of("number", "W-1", "kind", "tile water");
    Sample water = Sample.of(SampleReader.read(told));
    assertThat(HoldingTime.flags("nitrate", water, TAKEN)).containsExactly("holding-unknown");
    assertThat(HoldingTime.flags("perchlorate", water, TAKEN)).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"soil", "other"})
  void theRuleIsForWaters(String kind) {
    assertThat(after("P90D", "nitrate", "kind", kind, "cooled", "false")).isEmpty();
    assertThat(after("P90D", "nitrate", "cooled", "false")).isEmpty();
  }

  @Test
  void aTimeThatCountsFromZeroIsNoDate() {
    assertThat(HoldingTime.flags("nitrate", sample("kind", "tile water"), Instant.EPOCH)).isEmpty();
  }

  private static String[] with(String[] fields, String key, String value) {
    return new String[] {fields[0], fields[1], key, value};
  }
}
