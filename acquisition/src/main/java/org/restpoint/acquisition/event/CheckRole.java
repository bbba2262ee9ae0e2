package org.restpoint.acquisition.event;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** What a reading that checks other results is. */
public enum CheckRole {
  /** A known solution, read as if it were a sample. */
  @JsonProperty("check-standard")
  CHECK_STANDARD,
  /** A sample of nothing, taken through the whole procedure. */
  @JsonProperty("blank")
  BLANK,
  /** Another portion of a sample that was measured before. */
  @JsonProperty("duplicate")
  DUPLICATE,
  /** A portion of a sample that was measured before, with a known amount added. */
  @JsonProperty("spike")
  SPIKE;

  /** The word that stands for it. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** The same in a sentence. */
  public String spoken() {
    return word().replace('-', ' ');
  }

  /** Whether it is a portion of a sample, so that its result bears the sample's record. */
  public boolean isOfSample() {
    return this == DUPLICATE || this == SPIKE;
  }

  /** The role of a word; empty where it is none. */
  public static Optional<CheckRole> of(String word) {
    return Arrays.stream(values()).filter(role -> role.word().equals(word)).findFirst();
  }
}
