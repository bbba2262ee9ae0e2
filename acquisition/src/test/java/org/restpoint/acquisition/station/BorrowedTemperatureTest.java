package org.restpoint.acquisition.station;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.restpoint.acquisition.event.Calibration;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.event.Result.Outcome;
import org.restpoint.acquisition.instruction.Instruction;
import org.restpoint.config.station.TemperatureSource;
import org.restpoint.config.station.TemperatureSource.WhenStale;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.reading.Reading;

class BorrowedTemperatureTest {

  /** An electrode that borrows from a thermometer what is at most 30 s old. */
  private static Site borrowing(WhenStale whenStale) {
    return Site.of(new Stations().thermometer("temp-1").electrode("no3-a", borrowed(whenStale)));
  }

  private static TemperatureSource borrowed(WhenStale whenStale) {
    return new TemperatureSource.FromProbe("temp-1", Duration.ofSeconds(30), whenStale);
  }

  @Test
  void aThermometerLendsItsTemperature() {
    Site site = borrowing(WhenStale.REFUSE).thermometer(18.5).calibrate("no3-a");
    Result result = site.thermometer(21.5).measure("no3-a", 270).result();
    assertThat(result.outcome()).isEqualTo(Outcome.SETTLED);
    assertThat(result.celsius().orElseThrow()).isEqualTo(21.5);
    assertThat(result.calibration().orElseThrow().referenceCelsius()).isEqualTo(18.5);
  }

  @Test
  void anElectrodeLendsItsTemperatureToo() {
    Site site =
        Site.of(
            new Stations()
                .electrode("temp-1", new TemperatureSource.FromReading())
                .electrode("no3-a", borrowed(WhenStale.REFUSE)));
    site.routine.reading("temp-1", Reading.of(site.now(), 200, 19));
    assertThat(site.calibrate("no3-a").measure("no3-a", 270).result().celsius().orElseThrow())
        .isEqualTo(19);
  }

  @Test
  void aTemperatureNobodyHasGivenYetRefusesTheNumber() {
    Site before = borrowing(WhenStale.FLAG).thermometer(20).calibrate("no3-a");
    Result result = before.restarted("no3-a").measure("no3-a", 270).result();
    assertThat(result.outcome()).isEqualTo(Outcome.REFUSED);
    assertThat(result.reasons())
        .containsExactly(
            new Reason(
                "no-temperature",
                "probe temp-1 has not given a temperature yet",
                "Look whether probe temp-1 is connected."));
  }

  @Test
  void anOldTemperatureIsRefused() {
    Site site = borrowing(WhenStale.REFUSE).thermometer(20).calibrate("no3-a");
    Result result = site.meanwhile(Duration.ofMillis(21_001)).measure("no3-a", 270).result();
    assertThat(result.outcome()).isEqualTo(Outcome.REFUSED);
    assertThat(result.concentration()).isEmpty();
    assertThat(result.reasons())
        .containsExactly(
            new Reason(
                "no-temperature",
                "the temperature of probe temp-1 is 31 s old; it may be 30 s",
                "Look whether probe temp-1 is connected, or allow an older temperature with"
                    + " stale-after."));
  }

  @Test
  void aTemperatureJustYoungEnoughServes() {
    Site site = borrowing(WhenStale.REFUSE).thermometer(20).calibrate("no3-a");
    Result result = site.meanwhile(Duration.ofSeconds(21)).measure("no3-a", 270).result();
    assertThat(result.time()).isEqualTo(Site.START.plusSeconds(30));
    assertThat(result.outcome()).isEqualTo(Outcome.SETTLED);
    assertThat(result.flags()).isEmpty();
  }

  @Test
  void anOldTemperatureIsFlaggedWhereThatIsAskedFor() {
    Site site = borrowing(WhenStale.FLAG).thermometer(20).calibrate("no3-a");
    Result result = site.meanwhile(Duration.ofMinutes(1)).measure("no3-a", 270).result();
    assertThat(result.outcome()).isEqualTo(Outcome.SETTLED);
    assertThat(result.flags()).containsExactly("temperature-stale");
    assertThat(result.quality()).isEqualTo(3);
    assertThat(result.celsius().orElseThrow()).isEqualTo(20);
  }

  @Test
  void aReadingWithoutItsTemperatureDoesNotCalibrate() {
    Site site = Site.of(new Stations().electrode("no3-a", new TemperatureSource.FromReading()));
    site.tell("no3-a", new Instruction.Calibrate("low")).read("no3-a", 300);
    assertThat(site.all(Calibration.class))
        .singleElement()
        .satisfies(
            calibration ->
                assertThat(calibration.reasons())
                    .containsExactly(
                        new Reason(
                            "no-temperature",
                            "standard low: the reading at rest carries no temperature",
                            "Look whether the meter's temperature sensor is connected, or set"
                                + " temperature to a fixed value or another probe.")));
  }

  @Test
  void aFixedTemperatureNeedsNoThermometer() {
    Site site = Site.of(new Stations().electrode("no3-a", new TemperatureSource.Fixed(22, 1)));
    Result result = site.calibrate("no3-a").measure("no3-a", 300).result();
    assertThat(result.concentration().orElseThrow().value()).isCloseTo(10, within(1e-6));
    assertThat(result.celsius().orElseThrow()).isEqualTo(22);
  }
}
