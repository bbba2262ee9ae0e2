package org.restpoint.acquisition.day;

/** Where the tip of an electrode is, as far as somebody has told. */
public enum Place {
  /** Nobody has told. */
  UNKNOWN,
  /** In storage. */
  STORED,
  /** In storage for a rest that asks for long-term storage. */
  STORED_LONG,
  /** In its soaking solution, for as long as it is to soak. */
  SOAKING,
  /** In a standard, a sample or another solution. */
  IN_SOLUTION,
  /** In the air: rinsed and blotted, and not yet in the next solution. */
  OUT
}
