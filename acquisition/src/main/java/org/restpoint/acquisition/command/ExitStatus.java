package org.restpoint.acquisition.command;

/** Exit statuses of all commands. */
final class ExitStatus {

  /** Done. */
  static final int DONE = 0;

  /** A defect of Restpoint itself. */
  static final int DEFECT = 1;

  /** Wrong usage. */
  static final int USAGE = 2;

  /** The station file is refused. */
  static final int STATION_REFUSED = 3;

  /** It could not start. */
  static final int NOT_STARTED = 4;

  /** The work ran and its outcome is bad. */
  static final int BAD_OUTCOME = 5;

  private ExitStatus() {}
}
