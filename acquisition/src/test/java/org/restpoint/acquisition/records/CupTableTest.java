package org.restpoint.acquisition.records;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.acquisition.instruction.InstructionException;

class CupTableTest {

  @TempDir private Path folder;

  private Path list(String text) throws IOException {
    return Files.writeString(folder.resolve("cups.csv"), text);
  }

  @Test
  void aRowIsACupAndAnEmptyCellIsLeftOut() throws IOException {
    assertThat(
            CupTable.read(
                    list(
                        """
                        cup,standard,sample,check,rinse
                        1, mid ,,,
                        2,,S-1,,

                        3,,,mid,
                        4,,,,yes
                        """))
                .toString())
        .isEqualTo(
            "[{\"cup\":\"1\",\"standard\":\"mid\"},{\"cup\":\"2\",\"sample\":\"S-1\"},"
                + "{\"cup\":\"3\",\"check\":\"mid\"},{\"cup\":\"4\",\"rinse\":true}]");
  }

  @Test
  void semicolonsAndAByteOrderMarkAreWhatSpreadsheetsWrite() throws IOException {
    assertThat(CupTable.read(list("\uFEFFCup;Sample\r\n1;\"S;1\"\r\n")).toString())
        .isEqualTo("[{\"cup\":\"1\",\"sample\":\"S;1\"}]");
  }

  @Test
  void allMistakesAreToldWithTheirLines() throws IOException {
    Path wrong = list("cup,smaple,sample,sample\n1,,S-1,,x\n,,S-2\n");
    assertThatThrownBy(() -> CupTable.read(wrong))
        .isInstanceOf(InstructionException.class)
        .hasMessage(
            """
            line 1: expected columns among cup, standard, sample, check, blank, duplicate, spike, rinse, recipe; found smaple
            line 1: expected each column once; found one twice
            line 2: cell 5 stands under no column: x""");
    Path empty = list("\n");
    assertThatThrownBy(() -> CupTable.read(empty))
        .hasMessage("expected a line of column names and a line for each cup; found none");
    Path bytes =
        Files.write(
            folder.resolve("latin.csv"),
            "cup,sample\n1,Süd\n".getBytes(StandardCharsets.ISO_8859_1));
    assertThatThrownBy(() -> CupTable.read(bytes))
        .hasMessageStartingWith("it is not text in UTF-8");
  }
}
