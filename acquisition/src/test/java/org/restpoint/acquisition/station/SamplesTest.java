package org.restpoint.acquisition.station;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.restpoint.acquisition.event.Answer;
import org.restpoint.acquisition.event.Event;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.event.SampleRecord;
import org.restpoint.config.station.TemperatureSource;

/** Two nitrate electrodes at one bench, and samples of which more is known as the day goes on. */
class SamplesTest {

  private static final String A = "no3-a";
  private static final String B = "no3-b";
  private static final String WATER =
      "{'do':'sample','sample':{'number':'W-1','kind':'tile water','cooled':true,"
          + "'taken':'2026-04-02T13:00:00Z'}}";

  private final Site site = Site.of(stations()).calibrate(A).calibrate(B);

  private static Stations stations() {
    TemperatureSource fixed = new TemperatureSource.Fixed(22, 0.1);
    return new Stations().electrode(A, fixed).electrode(B, fixed);
  }

  private Result measured(String probe, String sample) {
    site.tell(probe, "{'do':'measure','sample':%s}".formatted(sample)).read(probe, 260);
    return site.result();
  }

  private static String written(Result result) {
    return result.sample().orElseThrow().toString().replace('"', '\'');
  }

  private List<Answer> answers(String word) {
    return site.answers.stream().filter(answer -> answer.instruction().equals(word)).toList();
  }

  private SampleRecord record() {
    List<SampleRecord> records = site.all(SampleRecord.class);
    return records.get(records.size() - 1);
  }

  @Test
  void aRecordThatIsKeptBeforeIsUsedByItsNumber() {
    site.tell(B, "{'do':'sample','sample':{'number':'S-1','grower':'Ada','kind':'soil'}}");
    Result result = measured(A, "'S-1'");
    assertThat(written(result)).isEqualTo("{'number':'S-1','grower':'Ada','kind':'soil'}");
    assertThat(result.revision()).isEqualTo(1);
    assertThat(record().revision()).isEqualTo(1);
    assertThat(record().id()).isEqualTo("sample:S-1");
    assertThat(answers("sample"))
        .extracting(Answer::verdict)
        .containsExactly(Answer.Verdict.ACCEPTED, Answer.Verdict.DONE);
    assertThat(answers("sample").get(1).outcome()).contains(record());
  }

  @Test
  void aRecordThatComesWithTheMeasurementIsKeptFirst() {
    site.tell(A, "{'do':'sample','sample':{'number':'S-1','grower':'Ada','farm':'F'}}");
    Result result = measured(A, "{'number':'S-1','grower':'Bea'}");
    assertThat(written(result)).isEqualTo("{'number':'S-1','grower':'Bea','farm':'F'}");
    assertThat(record().revision()).isEqualTo(2);
    assertThat(EventJson.write(record().changed()))
        .isEqualTo("[{\"field\":\"grower\",\"before\":\"Ada\",\"after\":\"Bea\"}]");
  }

  @Test
  void whatIsToldDuringTheReadingStandsInItsResult() {
    site.tell(A, "{'do':'measure','sample':'S-1'}");
    site.tell(A, "{'do':'sample','sample':{'number':'S-1','field':'north'}}");
    Result result = site.read(A, 260).result();
    assertThat(written(result)).isEqualTo("{'number':'S-1','field':'north'}");
    assertThat(result.revision()).isEqualTo(1);
  }

  @Test
  void aCorrectionSaysTheLatestOfEachResultOfTheSampleAgainAndNoOther() {
    Result first = measured(A, "'S-1'");
    Result other = measured(B, "'S-2'");
    Result second = measured(B, "'S-1'");
    site.tell(A, "{'do':'sample','sample':{'number':'S-1','grower':'Ada','kind':'soil'}}");
    site.meanwhile(Duration.ofHours(1));
    int said = site.all(Result.class).size();
    site.tell(B, "{'do':'sample','sample':{'number':'S-1','grower':'Bea'}}");

    List<Result> again = site.all(Result.class).subList(said, said + 2);
    assertThat(site.all(Result.class)).hasSize(said + 2);
    assertThat(again).extracting(Result::id).containsExactly(first.id(), second.id());
    assertThat(again)
        .allSatisfy(
            result -> {
              assertThat(result.revision()).isEqualTo(3);
              assertThat(written(result))
                  .isEqualTo("{'number':'S-1','grower':'Bea','kind':'soil'}");
              assertThat(result.revised())
                  .contains(
                      new Result.Revised(
                          site.now(), "the record of sample S-1 was corrected: grower"));
            });
    assertThat(again.get(0).time()).isEqualTo(first.time());
    assertThat(again.get(0).concentration()).isEqualTo(first.concentration());
    assertThat(site.all(Result.class)).filteredOn(r -> r.id().equals(other.id())).hasSize(1);
  }

  @Test
  void aFirstRecordAfterTheReadingIsNoCorrection() {
    measured(A, "'S-1'");
    site.tell(A, "{'do':'sample','sample':{'number':'S-1','grower':'Ada'}}");
    assertThat(site.result().revised().orElseThrow().because())
        .isEqualTo("the record of sample S-1 was filled in: grower");
  }

  @Test
  void whatChangesNothingIsAnsweredAndNotSaid() {
    site.tell(A, "{'do':'sample','sample':{'number':'S-1','grower':'Ada'}}");
    measured(A, "'S-1'");
    int said = site.events.size();
    site.tell(A, "{'do':'sample','sample':{'number':'S-1','grower':'Ada','farm':''}}");
    assertThat(site.events).hasSize(said);
    assertThat(answers("sample").get(3).outcome()).contains(record());
  }

  @Test
  void theFlagsOfAWaterFollowItsRecord() {
    site.tell(A, WATER.replace("13:00", "00:00").replace("04-02", "03-31"));
    assertThat(measured(A, "'W-1'").flags()).containsExactly("held-too-long");
    assertThat(site.result().quality()).isEqualTo(3);

    site.tell(A, WATER.replace("true", "false"));
    assertThat(site.result().flags()).containsExactly("held-warm");

    site.tell(A, WATER);
    assertThat(site.result().flags()).isEmpty();
    assertThat(site.result().quality()).isEqualTo(1);
    assertThat(site.result().revision()).isEqualTo(3);

    site.tell(A, "{'do':'sample','sample':{'number':'W-1','taken':''}}");
    assertThat(site.result().flags()).containsExactly("holding-unknown");
  }

  @Test
  void aFlagOfAnotherKindStays() {
    site.tell(A, "{'do':'measure','sample':'W-1'}").read(A, 340);
    assertThat(site.result().flags()).containsExactly("below-standards");
    site.tell(A, WATER.replace("true", "false"));
    assertThat(site.result().flags()).containsExactly("below-standards", "held-warm");
    site.tell(A, WATER);
    assertThat(site.result().flags()).containsExactly("below-standards");
    assertThat(site.result().quality()).isEqualTo(3);
  }

  @Test
  void aRecordThatCannotBeIsRefusedAndWhatWasKeptStays() {
    site.tell(A, "{'do':'sample','sample':{'number':'S-1','depthTopCentimetres':30}}");
    List<Event> said = List.copyOf(site.events);
    site.tell(A, "{'do':'sample','sample':{'number':'S-1','depthBottomCentimetres':15}}");
    site.tell(A, "{'do':'measure','sample':{'number':'S-1','taken':'2027-01-01T00:00:00Z'}}");
    assertThat(site.events).isEqualTo(said);
    assertThat(site.answers.subList(site.answers.size() - 2, site.answers.size()))
        .allSatisfy(answer -> assertThat(answer.verdict()).isEqualTo(Answer.Verdict.REFUSED))
        .extracting(answer -> answer.reasons().get(0).text())
        .containsExactly(
            "the record of sample S-1 cannot be so: depthBottomCentimetres: expected no less than"
                + " depthTopCentimetres, 30; found 15",
            "the record of sample S-1 cannot be so: taken: expected a time that has passed; found"
                + " 2027-01-01T00:00Z");
  }

  @Test
  void aRefusedMeasurementKeepsItsRecordAllTheSame() {
    site.tell(A, "{'do':'measure'}");
    site.tell(A, "{'do':'measure','sample':{'number':'S-1','grower':'Ada'}}");
    assertThat(site.result().flags()).containsExactly("busy");
    assertThat(written(site.result())).isEqualTo("{'number':'S-1','grower':'Ada'}");
    assertThat(record().sample().get("grower").asText()).isEqualTo("Ada");
  }
}
