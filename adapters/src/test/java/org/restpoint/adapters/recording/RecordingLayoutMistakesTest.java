package org.restpoint.adapters.recording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.restpoint.adapters.recording.RecordingLayoutTest.BERLIN;
import static org.restpoint.adapters.recording.RecordingLayoutTest.GERMAN;
import static org.restpoint.adapters.recording.RecordingLayoutTest.SPLIT;
import static org.restpoint.adapters.recording.RecordingLayoutTest.TAB;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Headers that do not fit their layout, and layouts that fit no file. */
class RecordingLayoutMistakesTest {

  private final Path file;

  RecordingLayoutMistakesTest(@TempDir Path folder) {
    this.file = folder.resolve("made-up.csv");
  }

  @Test
  void aHeaderThatDoesNotFitIsToldWithItsColumnsAndWhatToWrite() {
    assertThatThrownBy(
            () -> open("Zeit;E [mV];E [mV];T;\"a \"\"b\"\n", StandardCharsets.UTF_8, SPLIT))
        .isInstanceOf(RecordingException.class)
        .hasMessage(
            file
                + " line 1: the header has no column \"Datum\", no column \"Uhrzeit\","
                + " no column \"Kanal\", no column \"U/mV\", no column \"T/\\xB0C\". Its columns"
                + " are \"Zeit\", \"E [mV]\", \"E [mV]\", \"T\", \"a \\\"b\". Say under"
                + " link.recording which is which: delimiter: semicolon, columns: { time: \"Zeit\","
                + " millivolts: \"E [mV]\" }");
    assertThatThrownBy(() -> open("time\tE\tE\n", StandardCharsets.UTF_16LE, TAB))
        .hasMessageContaining(
            "the header has 2 columns \"E\", so that its number must be given. Its columns are"
                + " \"time\", \"E\", \"E\".");
    assertThatThrownBy(() -> open("time\tE\n", StandardCharsets.UTF_8, TAB))
        .hasMessageContaining("the header has no column \"time\", no column \"E\".");
    assertThatThrownBy(() -> open("", StandardCharsets.UTF_8, TAB))
        .hasMessage(
            file
                + " line 1: expected a header with the columns \"time\", \"E\", found the end of"
                + " the file");
  }

  @Test
  void aLayoutThatCannotBeReadIsRefused() {
    Optional<Column> one = Optional.of(new Column.Numbered(1));
    Optional<Column> none = Optional.empty();
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new RecordingColumns(none, one, none, one, none));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new RecordingColumns(none, one, none, none, none));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new RecordingColumns(one, none, none, none, one));
    assertThatIllegalArgumentException().isThrownBy(() -> new Column.Numbered(0));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new TimeForm.Pattern("HH:mm:ss", Optional.of(BERLIN)));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new TimeForm.Pattern("d.M.yyyy HH:mm", Optional.empty()));
    assertThatIllegalArgumentException()
        .isThrownBy(
            () ->
                new RecordingLayout(
                    GERMAN, false, SPLIT.columns(), SPLIT.meaning(), SPLIT.time(), Set.of()));
    assertThat(new TimeForm.Pattern("M/d/yy h:mm:ss a xx", Optional.empty())).isNotNull();
  }

  private void open(String text, Charset charset, RecordingLayout layout) throws IOException {
    Files.write(file, text.getBytes(charset));
    RecordingReader.open(file, layout, line -> {}).close();
  }
}
