package org.restpoint.acquisition;

import org.restpoint.acquisition.command.Commands;

/** The program. */
public final class Restpoint {

  private Restpoint() {}

  /** Runs the command that is given and ends with its exit status. */
  public static void main(String[] arguments) {
    System.exit(Commands.line().execute(arguments));
  }
}
