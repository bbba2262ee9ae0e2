package org.restpoint.acquisition.instruction;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.restpoint.acquisition.event.CheckRole;
import org.restpoint.acquisition.instruction.InstructionReader.Addressed;

class InstructionReaderTest {

  private static Instruction.Task task(String json) {
    return InstructionReader.read(json).instruction().task();
  }

  @Test
  void anUnknownOrMissingWordIsRefusedWithThoseThereAre() {
    String words = String.join(", ", InstructionReader.WORDS);
    assertRefused("{}", "do is missing: expected an instruction: " + words);
    assertRefused(
        "{\"do\":\"dance\"}", "do: expected an instruction (%s); found dance".formatted(words));
  }

  private static void assertRefused(String json, String message) {
    assertThatThrownBy(() -> InstructionReader.read(json))
        .isInstanceOf(InstructionException.class)
        .hasMessage(message);
  }

  @Test
  void everyWordIsRead() {
    assertThat(task("{\"do\":\"calibrate\",\"standard\":\"mid\"}"))
        .isEqualTo(new Instruction.Calibrate("mid"));
    assertThat(task("{\"do\":\"verify\",\"standard\":\"mid\"}"))
        .isEqualTo(verify(CheckRole.CHECK_STANDARD, "mid", ""));
    assertThat(task("{\"do\":\"verify\",\"role\":\"check-standard\",\"standard\":\"mid\"}"))
        .isEqualTo(verify(CheckRole.CHECK_STANDARD, "mid", ""));
    assertThat(task("{\"do\":\"verify\",\"role\":\"blank\"}"))
        .isEqualTo(verify(CheckRole.BLANK, "", ""));
    assertThat(task("{\"do\":\"verify\",\"role\":\"duplicate\",\"sample\":\"S-1\"}"))
        .isEqualTo(verify(CheckRole.DUPLICATE, "", "S-1"));
    assertThat(task("{\"do\":\"verify\",\"role\":\"spike\",\"sample\":\"S-1\"}"))
        .isEqualTo(verify(CheckRole.SPIKE, "", "S-1"));
    assertThat(task("{\"do\":\"soak\"}")).isEqualTo(new Instruction.Soak(Optional.empty()));
    assertThat(task("{\"do\":\"soak\",\"minutes\":10080}"))
        .isEqualTo(new Instruction.Soak(Optional.of(Duration.ofDays(7))));
    assertThat(task("{\"do\":\"rinsed\"}")).isEqualTo(new Instruction.Rinsed(Optional.empty()));
    assertThat(task("{\"do\":\"replaced\"}"))
        .isEqualTo(new Instruction.Replaced(Instruction.Part.MEMBRANE));
    assertThat(task("{\"do\":\"replaced\",\"part\":\"electrode\"}"))
        .isEqualTo(new Instruction.Replaced(Instruction.Part.ELECTRODE));
    assertThat(task("{\"do\":\"cancel\"}")).isEqualTo(new Instruction.Cancel());
    for (String word : InstructionReader.WORDS) {
      assertThat(task("{\"do\":\"%s\"%s}".formatted(word, needed(word))).word()).isEqualTo(word);
    }
  }

  private static Instruction.Verify verify(CheckRole role, String standard, String sample) {
    return new Instruction.Verify(
        role,
        Optional.of(standard).filter(name -> !name.isEmpty()),
        Optional.of(sample).filter(number -> !number.isEmpty()));
  }

  private static String needed(String word) {
    return switch (word) {
      case "calibrate", "verify" -> ",\"standard\":\"mid\"";
      case "sample" -> ",\"sample\":{\"number\":\"S-1\"}";
      case "batch" -> ",\"cups\":[{\"cup\":\"1\",\"rinse\":true}]";
      default -> "";
    };
  }

  @Test
  void aMeasureTakesNothingANumberOrARecord() {
    assertThat(task("{\"do\":\"measure\"}"))
        .isEqualTo(new Instruction.Measure(Optional.empty(), Optional.empty(), false));
    assertThat(task("{\"do\":\"measure\",\"recipe\":\"tile\",\"private\":true}"))
        .isEqualTo(new Instruction.Measure(Optional.empty(), Optional.of("tile"), true));
    assertThat(sample("\"S-12\"")).isEqualTo("{\"number\":\"S-12\"}");
    assertThat(sample("{\"field\":\" north 40 \",\"number\":\"S-12\",\"grower\":\"\"}"))
        .isEqualTo("{\"number\":\"S-12\",\"grower\":\"\",\"field\":\"north 40\"}");
  }

  private static String sample(String json) {
    Instruction.Measure measure =
        (Instruction.Measure) task("{\"do\":\"measure\",\"sample\":%s}".formatted(json));
    return measure.sample().orElseThrow().toString();
  }

  @Test
  void whatStandsAroundAnInstructionIsKept() {
    Addressed read =
        InstructionReader.read(
            "{\"time\":\"2026-04-02T14:03:00Z\",\"probe\":\"no3-a\",\"id\":\"7\","
                + "\"do\":\"cancel\"}");
    assertThat(read.time()).contains(Instant.parse("2026-04-02T14:03:00Z"));
    assertThat(read.probe()).contains("no3-a");
    assertThat(read.instruction().id()).contains("7");
    assertThat(InstructionReader.read("{\"do\":\"cancel\"}").instruction().id()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "{\"do\":7}                          | do: expected text in quotes, 1 to 200 characters; found 7",
        "{\"do\":\" \"}                      | do: expected text in quotes, 1 to 200 characters; found \" \"",
        "{\"do\":\"cancel\",\"id\":7}        | id: expected text in quotes, 1 to 200 characters; found 7",
        "{\"do\":\"cancel\",\"id\":null}     | id: expected text in quotes, 1 to 200 characters; found null",
        "{\"do\":\"cancel\",\"id\":\"\"}     | id: expected text in quotes, 1 to 200 characters; found \"\"",
        "{\"do\":\"cancel\",\"probe\":[1]}   | probe: expected text in quotes, 1 to 200 characters; found [1]",
        "{\"do\":\"cancel\",\"standard\":\"mid\"} | cancel takes do, id, probe, time; found standard",
        "{\"do\":\"replaced\",\"part\":\"cap\"} | part: expected membrane or electrode; found cap",
        "{\"do\":\"replaced\",\"part\":7} | part: expected text in quotes, 1 to 200 characters; found 7",
        "{\"do\":\"rinsed\",\"part\":\"membrane\"} | rinsed takes do, id, into, probe, time; found part",
        "{\"do\":\"rinsed\",\"b\":1,\"a\":1} | rinsed takes do, id, into, probe, time; found a, b",
        "{\"do\":\"calibrate\"}              | standard is missing: expected the name of the standard the electrode is in",
        "{\"do\":\"calibrate\",\"standard\":5} | standard: expected text in quotes, 1 to 200 characters; found 5",
        "{\"do\":\"calibrate\",\"standard\":\"mid\",\"sample\":\"x\"} | calibrate takes do, id, probe, standard, time; found sample",
        "{\"do\":\"verify\",\"standard\":5}  | standard: expected text in quotes, 1 to 200 characters; found 5",
        "{\"do\":\"verify\",\"role\":\"blank\",\"standard\":\"mid\"} | verify role=blank takes do, id, probe, role, time; found standard",
        "{\"do\":\"verify\",\"role\":\"referee\"} | role: expected check-standard, blank, duplicate or spike; found referee",
        "{\"do\":\"verify\",\"role\":\"spike\"} | sample is missing: expected the number of a sample that was measured before",
        "{\"do\":\"verify\",\"role\":\"spike\",\"sample\":{}} | sample: expected text in quotes, 1 to 200 characters; found {}",
        "{\"do\":\"verify\",\"standard\":\"mid\",\"sample\":\"x\"} | verify role=check-standard takes do, id, probe, role, standard, time; found sample",
        "{\"do\":\"verify\",\"value\":5}     | verify takes do, id, probe, role, sample, standard, time; found value",
        "{\"do\":\"measure\",\"sample\":12}  | sample: expected a sample number in quotes, 1 to 200 characters, or a record in braces; found 12",
        "{\"do\":\"measure\",\"sample\":\"\"} | sample: expected a sample number in quotes, 1 to 200 characters, or a record in braces; found \"\"",
        "{\"do\":\"measure\",\"sample\":null} | sample: expected a sample number in quotes, 1 to 200 characters, or a record in braces; found null",
        "{\"do\":\"measure\",\"smaple\":\"x\"} | measure takes do, id, private, probe, recipe, sample, time; found smaple",
        "{\"do\":\"measure\",\"sample\":{}} | sample: number is missing: expected the number of the sample",
        "{\"do\":\"sample\"} | sample is missing: expected a record in braces with its number",
        "{\"do\":\"sample\",\"sample\":\"S-1\"} | sample: expected a record in braces with its number; found \"S-1\"",
        "{\"do\":\"sample\",\"number\":\"S-1\"} | sample takes do, id, probe, sample, time; found number",
        "{\"do\":\"sample\",\"sample\":{\"number\":\"S-1\",\"growr\":\"A\",\"cooled\":1}} | sample: growr is no field of a sample; did you mean grower?; cooled: expected true or false; found 1",
        "{\"do\":\"soak\",\"minutes\":0}     | minutes: expected a whole number from 1 to 10080; found 0",
        "{\"do\":\"soak\",\"minutes\":1.5}   | minutes: expected a whole number from 1 to 10080; found 1.5",
        "{\"do\":\"soak\",\"minutes\":10081} | minutes: expected a whole number from 1 to 10080; found 10081",
        "{\"do\":\"soak\",\"minutes\":\"20\"} | minutes: expected a whole number from 1 to 10080; found \"20\"",
        "{\"do\":\"soak\",\"minutes\":99999999999} | minutes: expected a whole number from 1 to 10080; found 99999999999",
        "{\"do\":\"soak\",\"minutes\":null}  | minutes: expected a whole number from 1 to 10080; found null",
        "{\"do\":\"store\",\"days\":0}       | days: expected a whole number from 1 to 3660; found 0",
        "{\"do\":\"store\",\"for\":1}        | store takes days, do, id, probe, time; found for",
        "{\"do\":\"rinsed\",\"into\":1}      | into: expected text in quotes, 1 to 200 characters; found 1",
        "{\"do\":\"soak\",\"hours\":1}       | soak takes do, id, minutes, probe, time; found hours",
        "{\"do\":\"cancel\",\"time\":\"noon\"} | time: expected ISO 8601 in UTC, like 2026-04-02T14:03:00Z, or seconds from zero; found \"noon\"",
        "{\"do\":\"cancel\",\"time\":null} | time: expected ISO 8601 in UTC, like 2026-04-02T14:03:00Z, or seconds from zero; found null",
        "{\"do\":\"cancel\",\"time\":{}} | time: expected ISO 8601 in UTC, like 2026-04-02T14:03:00Z, or seconds from zero; found {}",
        "{\"do\":\"cancel\",\"time\":-0.001} | time: expected a time from 1970 to 2199; found -0.001",
        "{\"do\":\"cancel\",\"time\":\"+99999-01-01T00:00:00Z\"} | time: expected a time from 1970 to 2199; found \"+99999-01-01T00:00:00Z\"",
        "{\"do\":\"cancel\",\"time\":\"1969-12-31T23:59:59Z\"} | time: expected a time from 1970 to 2199; found \"1969-12-31T23:59:59Z\"",
        "[]                                  | expected an instruction as a JSON object, like {\"do\":\"measure\"}; found other JSON",
        "\"measure\"                         | expected an instruction as a JSON object, like {\"do\":\"measure\"}; found other JSON",
        "null                                | expected an instruction as a JSON object, like {\"do\":\"measure\"}; found other JSON",
        "` `                                 | expected an instruction as a JSON object, like {\"do\":\"measure\"}; found nothing",
      })
  void aWrongInstructionIsRefusedWithWhatWasExpected(String json, String message) {
    assertRefused(json, message);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "measure | Unrecognized token 'measure'",
        "{\"do\":\"cancel\" | Unexpected end-of-input",
        "{\"do\":\"cancel\"} {} | Trailing token",
        "{\"do\":\"cancel\",\"do\":\"measure\"} | Duplicate",
      })
  void textThatIsNotOneJsonObjectIsRefused(String json, String found) {
    assertThatThrownBy(() -> InstructionReader.read(json))
        .isInstanceOf(InstructionException.class)
        .hasMessageStartingWith(
            "expected an instruction as a JSON object; found text that is not JSON: ")
        .hasMessageContaining(found);
  }

  @Test
  void aTimeMayBeSecondsFromTheZeroOfARecording() {
    assertThat(InstructionReader.read("{\"do\":\"cancel\",\"time\":12.5}").time())
        .contains(Instant.EPOCH.plusMillis(12_500));
    assertThat(InstructionReader.read("{\"do\":\"cancel\",\"time\":0}").time())
        .contains(Instant.EPOCH);
  }

  @ParameterizedTest
  @ValueSource(strings = {"1e400", "1e999999", "1e2147483000", "-1e300", "99999999999999999999"})
  void aTimeBeyondAllTimesIsRefused(String seconds) {
    assertThatThrownBy(
            () -> InstructionReader.read("{\"do\":\"cancel\",\"time\":%s}".formatted(seconds)))
        .isInstanceOf(InstructionException.class)
        .hasMessageStartingWith("time: expected ");
  }

  @Test
  void aLongWrongValueIsShownByItsBeginning() {
    assertRefused(
        "{\"do\":\"cancel\",\"id\":\"%s\"}".formatted("x".repeat(300)),
        "id: expected text in quotes, 1 to 200 characters; found \"%s ..."
            .formatted("x".repeat(59)));
  }

  @Test
  void anEndlessInstructionIsNotRead() {
    String json = "{\"do\":\"cancel\"}" + " ".repeat(70_000);
    assertRefused(json, "expected an instruction of at most 65536 characters; found 70015");
  }
}
