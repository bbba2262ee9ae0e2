package org.restpoint.acquisition.station;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.restpoint.acquisition.event.Answer;
import org.restpoint.acquisition.event.Event;
import org.restpoint.acquisition.event.RawReading;
import org.restpoint.acquisition.instruction.Instruction;
import org.restpoint.acquisition.probe.ProbeMemory;
import org.restpoint.config.station.Routine;
import org.restpoint.config.station.TemperatureSource;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.reading.Reading;

class StationRoutineTest {

  private static final TemperatureSource FIXED = new TemperatureSource.Fixed(22, 1);

  @Test
  void aReadingOfAnUnknownProbeIsNotTaken() {
    Site site = Site.of(new Stations());
    assertThat(site.routine.reading("no3-z", Reading.of(site.now(), 200, 20))).isFalse();
    assertThat(site.events).isEmpty();
  }

  @Test
  void anInstructionForAnUnknownProbeOrAThermometerIsRefused() {
    Site site =
        Site.of(
            new Stations()
                .thermometer("temp-1")
                .electrode("no3-a", FIXED)
                .electrode("no3-b", FIXED));
    for (String probe : List.of("temp-1", "no3-z")) {
      site.answers.clear();
      site.tell(probe, new Instruction.Cancel());
      Answer answer = site.answers.get(0);
      assertThat(answer.id()).contains("7");
      assertThat(answer.verdict()).isEqualTo(Answer.Verdict.REFUSED);
      assertThat(answer.reasons())
          .containsExactly(
              new Reason(
                  "probe-unknown",
                  "%s is not an electrode of this station: no3-a, no3-b".formatted(probe),
                  "Name one of them."));
    }
  }

  @Test
  void rawReadingsGoOutForThoseThatAskOrForAll() {
    Stations stations = new Stations().thermometer("temp-1").publishingRaw("no3-a", FIXED);
    assertThat(Site.of(stations).thermometer(20).read("no3-a", 200).raw())
        .extracting(RawReading::probe)
        .containsOnly("no3-a");
    assertThat(Site.publishingAllRaw(stations).thermometer(20).read("no3-a", 200).raw())
        .extracting(RawReading::probe)
        .containsExactly("temp-1", "no3-a", "no3-a", "no3-a");
  }

  @Test
  void theEventsOfAllProbesComeInTheOrderOfTheirTimes() {
    Stations stations =
        new Stations()
            .routine(new Routine.EachInterval(Duration.ofMinutes(1)))
            .electrode("a", FIXED)
            .routine(new Routine.EachInterval(Duration.ofSeconds(40)))
            .electrode("b", FIXED)
            .routine(new Routine.EachRest(Duration.ofSeconds(95)))
            .electrode("c", FIXED);
    Site site = Site.publishingAllRaw(stations).read("c", 200);
    site.meanwhile(Duration.ofMinutes(5)).read("a", 200);
    site.meanwhile(Duration.ofMinutes(5)).tell("b", new Instruction.Calibrate("low"));
    site.routine.elapse(site.now().plusSeconds(300));
    assertThat(site.events).hasSizeGreaterThan(30);
    assertThat(site.events).extracting(Event::time).isSorted();
  }

  @Test
  void aThermometerRemembersNothingAndAnElectrodeItsCalibration() {
    Site site = Site.of(new Stations().thermometer("temp-1").electrode("no3-a", FIXED));
    assertThat(site.routine.memory("temp-1")).isEmpty();
    assertThat(site.routine.memory("no3-z")).isEmpty();
    ProbeMemory memory = site.calibrate("no3-a").routine.memory("no3-a").orElseThrow();
    assertThat(memory.inForce()).isPresent();
    assertThat(memory.analyte()).contains("nitrate");
  }

  @Test
  void theVocabularyHoldsEachIonWithItsBases() {
    assertThat(StationTerms.vocabulary().basesByAnalyte().get("nitrate"))
        .containsExactlyInAnyOrder("as-N", "as-ion");
    assertThat(StationTerms.vocabulary().basesByAnalyte().get("calcium")).containsExactly("as-ion");
  }
}
