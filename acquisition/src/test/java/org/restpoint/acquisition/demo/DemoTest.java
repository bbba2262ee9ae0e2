package org.restpoint.acquisition.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.acquisition.event.Calibration.Verdict;
import org.restpoint.acquisition.event.EventJson;

/** What the demo does when things come out otherwise than told. */
class DemoTest {

  private static final Solution STRONG = new Solution("a strong solution", 100, 22);
  private static final int FAST = 300;

  @TempDir Path folder;

  @Test
  void aDemoThatComesOutOtherwiseThanToldSaysSoAndFails() throws InterruptedException {
    StringWriter account = new StringWriter();
    Demo demo = new Demo(folder.resolve("demo"), 0, FAST, Instant.parse("2026-04-02T08:00:00Z"));

    boolean good =
        demo.play(
            "restpoint",
            new PrintWriter(account),
            (technician, told) -> {
              technician.soak(STRONG, "A minute is enough.", 1);
              technician.calibrate("high", STRONG, "Nothing is wrong with it.", Verdict.REFUSED);
              return List.of(
                  technician.measure(
                      "sample",
                      new Solution("sample", 50, 22),
                      "One standard is enough.",
                      EventJson.mapper().createObjectNode().put("number", "1"),
                      List.of()),
                  technician.measureInVain(
                      "sample again",
                      new Solution("sample", 50, 22),
                      "Nothing stands against it.",
                      EventJson.mapper().createObjectNode().put("number", "2"),
                      "calibration-refused"));
            });

    assertThat(good).isFalse();
    assertThat(account.toString().replaceAll("\\s+", " "))
        .containsSubsequence(
            "A minute is enough.",
            "ACCEPTED (high): one standard gives the offset",
            "RESULT ",
            "flag",
            "THE DEMO FAILED: it did not come out as its story says.",
            "- standard high was expected to be refused",
            "- sample was expected to settle with no flag",
            "- sample again was expected to be refused: calibration-refused")
        .doesNotContain("LOOK FURTHER");
  }
}
