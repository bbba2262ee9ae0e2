package org.restpoint.acquisition.command;

/** A command cannot go on; the message is for the person at the terminal. */
final class CommandException extends RuntimeException {

  private static final long serialVersionUID = 1;

  private final int exitStatus;

  CommandException(int exitStatus, String message) {
    super(message);
    this.exitStatus = exitStatus;
  }

  int exitStatus() {
    return exitStatus;
  }
}
