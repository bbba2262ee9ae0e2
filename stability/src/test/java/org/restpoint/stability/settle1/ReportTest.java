package org.restpoint.stability.settle1;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ForkJoinPool;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

class ReportTest {

  private static final Run RUN = run();

  private static Run run() {
    return Run.of(Sets.draw(7, List.of(8L, 9L), 25), Candidates.fixed(), Candidates.all());
  }

  @Test
  void everyTableThatTellsATimeTellsTheErrorBesideIt() {
    String report = new Report(RUN).markdown();
    assertThat(report.lines().filter(line -> line.contains("mean, s")))
        .hasSize(5)
        .allMatch(line -> line.contains("> 1 mV, %") && line.contains("RMSE, mV"));
  }

  @Test
  void everyRuleIsReportedBySeedAndByModel() {
    String report = new Report(RUN).markdown();
    for (Row row : RUN.rows()) {
      String name = row.candidate().name();
      assertThat(report)
          .contains("| " + name + " | 8 |")
          .contains("| " + name + " | 9 |")
          .contains("| " + name + " | two exponentials |");
    }
  }

  @Test
  void everyRowOfATableHasAsManyCellsAsItsTitles() {
    int cells = 0;
    for (String line : new Report(RUN).markdown().lines().toList()) {
      int bars = line.length() - line.replace("|", "").length();
      if (cells > 0 && bars > 0) {
        assertThat(bars).isEqualTo(cells);
      }
      cells = bars;
    }
  }

  @Test
  void oneThreadReportsTheSameAsMany() throws InterruptedException, ExecutionException {
    ForkJoinPool alone = new ForkJoinPool(1);
    try {
      String report = alone.submit(() -> new Report(run()).markdown()).get();
      assertThat(report).isEqualTo(new Report(RUN).markdown());
    } finally {
      alone.shutdown();
    }
  }

  @Test
  void picturesAreWellFormedAndNameEveryCandidate(@TempDir Path folder)
      throws IOException, ParserConfigurationException, SAXException {
    new Pictures(RUN).write(folder.resolve("pictures"));
    for (String name : List.of("time-against-false-settles.svg", "errors.svg", "traces.svg")) {
      String svg = Files.readString(folder.resolve("pictures").resolve(name));
      DocumentBuilderFactory.newInstance()
          .newDocumentBuilder()
          .parse(new InputSource(new StringReader(svg)));
      for (Row row : RUN.candidates()) {
        assertThat(svg).contains(row.candidate().name());
      }
      assertThat(svg).contains("mV").doesNotContain("NaN", "Infinity");
    }
  }
}
