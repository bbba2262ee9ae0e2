package org.restpoint.adapters.bus;

/** What asking a probe once comes down to: a question or several, and their answers. */
public interface Exchange {

  /**
   * Asks, and waits for the answer. It gives up within a bounded time, and soon when the turn is
   * {@link Turn#isOver() over}; what it then returns is not looked at.
   *
   * @param turn the wire, for this exchange alone until it returns, and its time
   * @return what came of it
   * @throws InterruptedException when somebody wants the thread to end
   */
  Outcome poll(Turn turn) throws InterruptedException;
}
