package org.restpoint.stability.fault;

/** What is wrong with the chain of electrode, reference, cable and meter. */
public enum Fault {
  /** Nothing is connected that would hold the input at a potential. */
  OPEN_INPUT("input-open"),
  /** The input is held at zero, whatever the solution. */
  SHORTED_INPUT("input-shorted"),
  /** There is a potential, but it does not follow the solution. */
  DEAD("electrode-dead"),
  /** The potential follows the solution the wrong way. */
  REVERSED("electrode-reversed");

  private final String code;

  Fault(String code) {
    this.code = code;
  }

  /** The code of its reason. */
  public String code() {
    return code;
  }
}
