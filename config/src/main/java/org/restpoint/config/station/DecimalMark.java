package org.restpoint.config.station;

/** What stands before the decimals of a device's numbers. */
public enum DecimalMark {
  /** A point. */
  POINT,
  /** A comma. */
  COMMA
}
