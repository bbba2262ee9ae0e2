package org.restpoint.adapters.line;

/**
 * A line that may be looked at only so often. A backtracking match costs looks, so one that runs
 * away ends in {@link Spent} after a bounded time, whatever the pattern.
 */
final class StepBudget implements CharSequence {

  /**
   * Looks allowed for one matching: a thousand for each character of the longest line, and done in
   * some ten milliseconds. An ordinary pattern needs one to ten looks a character.
   */
  static final int MOST_STEPS = 1_000_000;

  /** The budget was used up. Carries no stack trace: it is an answer, not a fault. */
  static final class Spent extends RuntimeException {
    private static final long serialVersionUID = 1L;

    Spent() {
      super("more than " + MOST_STEPS + " steps", null, false, false);
    }
  }

  private final String text;
  private int steps;

  StepBudget(String text) {
    this.text = text;
  }

  @Override
  public char charAt(int index) {
    if (++steps > MOST_STEPS) {
      throw new Spent();
    }
    return text.charAt(index);
  }

  @Override
  public int length() {
    return text.length();
  }

  @Override
  public CharSequence subSequence(int start, int end) {
    return text.subSequence(start, end);
  }

  @Override
  public String toString() {
    return text;
  }
}
