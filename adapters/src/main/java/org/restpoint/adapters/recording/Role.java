package org.restpoint.adapters.recording;

/** What a column of a recording gives. */
enum Role {
  /** The date, where the time has two columns. */
  DATE,
  /** The time, or the time of day. */
  TIME,
  /** Whose reading it is. */
  PROBE,
  /** The number of the potential. */
  POTENTIAL,
  /** The number of the temperature. */
  TEMPERATURE,
  /** Nothing that is read. */
  OTHER
}
