package org.restpoint.adapters.recording;

/** Why a line of a recording gives no reading. */
public enum Skip {
  /** Its time cannot be read. */
  TIME("a time that cannot be read"),
  /** Its local time is one that daylight saving passes over. */
  LOCAL_TIME("a local time that does not exist"),
  /** Its time goes back. */
  TIME_BACK("a time that goes back"),
  /** Its time is too far from the clock. */
  TIME_OFF("a time too far from the clock"),
  /** It does not say whose reading it is. */
  PROBE("no name of a probe"),
  /** It has no number. */
  GAP("no value"),
  /** A number of it cannot be read. */
  NUMBER("a number that cannot be read"),
  /** It has too few values or too many. */
  VALUES("another number of values"),
  /** A quoted value runs over the end of the line, or the line has no end. */
  ENDLESS("no end of a value or a row"),
  /** Its numbers are none of an electrode or a thermometer. */
  BEYOND("a value that cannot be"),
  /** It was read before the file was written anew: counted then. */
  READ_BEFORE("a row that was read before"),
  /** It is the header once more: no row. */
  HEADER_AGAIN("the header again"),
  /** It is a comment: no row. */
  COMMENT("a comment");

  private final String words;

  Skip(String words) {
    this.words = words;
  }

  /** What it is, for a person. */
  public String words() {
    return words;
  }

  /** Whether it is a row that was rejected, rather than no row or one that was counted before. */
  public boolean isRejected() {
    return this != READ_BEFORE && this != HEADER_AGAIN && this != COMMENT;
  }
}
