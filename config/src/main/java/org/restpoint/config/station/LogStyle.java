package org.restpoint.config.station;

/** How the log is written on standard error. */
public enum LogStyle {
  /** One readable line an event. */
  PLAIN,
  /** One JSON object a line. */
  JSON
}
