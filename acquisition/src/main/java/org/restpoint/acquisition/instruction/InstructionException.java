package org.restpoint.acquisition.instruction;

/** An instruction that cannot be read; the message is for the person who gave it. */
public final class InstructionException extends RuntimeException {

  private static final long serialVersionUID = 1;

  /** With words for the person. */
  public InstructionException(String message) {
    super(message);
  }
}
