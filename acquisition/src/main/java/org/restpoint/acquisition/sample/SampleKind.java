package org.restpoint.acquisition.sample;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** What a sample is of. */
public enum SampleKind {
  /** Soil, or an extract of it. */
  SOIL("soil", false),
  /** Water out of a drain tile. */
  TILE_WATER("tile water", true),
  /** Water out of a well. */
  WELL_WATER("well water", true),
  /** Water out of a ditch, a stream, a pond or a lake. */
  SURFACE_WATER("surface water", true),
  /** Anything else. */
  OTHER("other", false);

  private final String word;
  private final boolean water;

  SampleKind(String word, boolean water) {
    this.word = word;
    this.water = water;
  }

  /** The word that stands for it in records. */
  public String word() {
    return word;
  }

  /** Whether the rule for keeping samples of water holds for it. */
  public boolean isWater() {
    return water;
  }

  /** The words of all kinds. */
  public static List<String> words() {
    return Arrays.stream(values()).map(SampleKind::word).toList();
  }

  /** The kind that a word stands for. */
  public static Optional<SampleKind> of(String word) {
    return Arrays.stream(values()).filter(kind -> kind.word.equals(word)).findFirst();
  }
}
