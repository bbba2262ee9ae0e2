package org.restpoint.stability.suspicion;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Weighs one suspect: its weight before any evidence, times a ratio for each piece of it. */
final class Weighing {

  private final Suspect suspect;
  private final List<String> evidence = new ArrayList<>();
  private double weight;
  private boolean accused;

  Weighing(Suspect suspect) {
    this.suspect = suspect;
    this.weight = suspect.weight();
  }

  /** Something that speaks for it by itself. */
  Weighing accuse(boolean holds, double ratio, String sentence) {
    accused |= holds;
    return support(holds, ratio, sentence);
  }

  /** Something that speaks for it only beside an accusation. */
  Weighing support(boolean holds, double ratio, String sentence) {
    if (holds) {
      weight *= ratio;
      evidence.add(sentence);
    }
    return this;
  }

  /** Something that speaks against it. */
  Weighing excuse(boolean holds, double ratio) {
    if (holds) {
      weight /= ratio;
    }
    return this;
  }

  /** The cause; empty where nothing accuses it. */
  Optional<Cause> cause(String remedy) {
    return accused
        ? Optional.of(new Cause(suspect, weight, String.join("; ", evidence), remedy))
        : Optional.empty();
  }
}
