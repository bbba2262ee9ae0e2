package org.restpoint.adapters.recording;

/** Which column of a recording something stands in. */
public sealed interface Column {

  /**
   * The column with this heading, white space around it aside.
   *
   * @param heading as it stands in the header; not empty
   */
  record Headed(String heading) implements Column {

    public Headed {
      if (heading.isBlank()) {
        throw new IllegalArgumentException("a heading without a letter names no column");
      }
      heading = heading.strip();
    }
  }

  /**
   * The column at this place.
   *
   * @param number counted from 1, at most {@link #MOST}
   */
  record Numbered(int number) implements Column {

    /** More columns than a table for people has. */
    public static final int MOST = 1_000;

    public Numbered {
      if (number < 1 || number > MOST) {
        throw new IllegalArgumentException(
            "columns are numbered 1 to %d, found %d".formatted(MOST, number));
      }
    }
  }
}
