package org.restpoint.adapters.recording;

import de.siegmar.fastcsv.reader.CommentStrategy;
import de.siegmar.fastcsv.reader.CsvReader;
import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/** Opens the text of a recording and finds out how it is written. */
final class RecordingText {

  /** More than any row needs; a missing quotation mark must not read a whole file into memory. */
  static final int LONGEST_ROW = 65_536;

  /** Room for empty lines before the header. */
  private static final int HEAD = 1_024;

  private RecordingText() {}

  /** A text and the layout it is to be read by. */
  record Opened(Reader text, RecordingLayout layout) {}

  /** Opens a file, as native where its header is, else in the layout. */
  static Opened open(Path file, RecordingLayout layout) throws IOException {
    InputStream bytes = new BufferedInputStream(Files.newInputStream(file), HEAD);
    try {
      bytes.mark(HEAD);
      byte[] head = bytes.readNBytes(HEAD);
      bytes.reset();
      Optional<RecordingLayout> nativeForm = nativeForm(head, layout);
      RecordingLayout used = nativeForm.orElse(layout);
      Encoding.Found found = used.text().encoding().of(head);
      bytes.skipNBytes(found.markBytes());
      return new Opened(new InputStreamReader(bytes, found.charset()), used);
    } catch (IOException | RuntimeException e) {
      bytes.close();
      throw e;
    }
  }

  /** The native form in the letters in which its header stands there, if it does. */
  private static Optional<RecordingLayout> nativeForm(byte[] head, RecordingLayout layout) {
    for (Encoding encoding : new Encoding[] {Encoding.UTF_8, layout.text().encoding()}) {
      Encoding.Found found = encoding.of(head);
      String text =
          new String(head, found.markBytes(), head.length - found.markBytes(), found.charset());
      if (text.lines()
          .filter(line -> !line.isEmpty())
          .findFirst()
          .filter(RecordingText::isNative)
          .isPresent()) {
        return Optional.of(RecordingLayout.NATIVE.in(encoding));
      }
    }
    return Optional.empty();
  }

  /** Whether a line is the native header, values in quotation marks or not. */
  static boolean isNative(String line) {
    return line.replace("\"", "").replace(" ", "").replace("\t", "").equals(RecordingReader.HEADER);
  }

  /** A parser of such texts. */
  static CsvReader.CsvReaderBuilder parser(TextForm form) {
    CsvReader.CsvReaderBuilder builder =
        CsvReader.builder()
            .fieldSeparator(form.delimiter().character())
            .skipEmptyLines(true)
            .allowExtraFields(true)
            .allowMissingFields(true)
            .allowExtraCharsAfterClosingQuote(true)
            .maxBufferSize(LONGEST_ROW);
    form.comment()
        .ifPresent(mark -> builder.commentCharacter(mark).commentStrategy(CommentStrategy.READ));
    return builder;
  }
}
