package org.restpoint.acquisition.slip;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Objects;
import java.util.Properties;

/**
 * What each flag of a result says to somebody who has not read the table of codes: the file {@code
 * flags.properties} beside this class, a line a code.
 */
final class FlagWords {

  private static final Properties WORDS = read();

  private FlagWords() {}

  /** The words for a flag; of one that has none, its code. */
  static String of(String flag) {
    return WORDS.getProperty(flag, flag);
  }

  private static Properties read() {
    Properties words = new Properties();
    try (InputStream file =
            Objects.requireNonNull(FlagWords.class.getResourceAsStream("flags.properties"));
        Reader text = new InputStreamReader(file, StandardCharsets.UTF_8)) {
      words.load(text);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return words;
  }
}
