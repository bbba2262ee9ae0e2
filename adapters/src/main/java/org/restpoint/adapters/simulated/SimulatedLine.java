package org.restpoint.adapters.simulated;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import org.restpoint.adapters.link.LinkHealth.Condition;
import org.restpoint.adapters.link.LinkListener;
import org.restpoint.adapters.link.LinkState;
import org.restpoint.adapters.link.LinkTrouble;

/**
 * The line to a simulated probe: whether it is plugged in and sends, as a link says it of a real
 * device. Times are simulated ones since the start. For one thread.
 */
final class SimulatedLine {

  private final String name;
  private final Duration noDataAfter;
  private final LinkState state;
  private final LinkListener listener;
  private boolean opened;
  private boolean lost;
  private boolean silent;
  private Duration heard = Duration.ZERO;

  SimulatedLine(String name, Duration noDataAfter, LinkState state, LinkListener listener) {
    this.name = name;
    this.noDataAfter = noDataAfter;
    this.state = state;
    this.listener = listener;
  }

  /** It is not plugged in. */
  void unplugged() {
    if (!lost) {
      lost = true;
      silent = false;
      tell(Condition.LOST, opened ? nowLost() : absent());
    }
  }

  /** It is plugged in. */
  void pluggedIn(Duration elapsed) {
    if (lost || !opened) {
      state.become(Condition.READING, "");
      heard = elapsed;
    }
    if (lost) {
      lost = false;
      listener.trouble(new LinkTrouble("simulated-back", name + " is plugged in again", ""));
    }
    opened = true;
  }

  /** A reading comes. */
  void sends(Instant time, Duration elapsed) {
    heard = elapsed;
    state.arrived(time);
    if (silent) {
      silent = false;
      listener.trouble(new LinkTrouble("data-back", name + " sends again", ""));
    }
  }

  /** No reading comes. */
  void isSilent(Duration elapsed) {
    if (!silent && elapsed.minus(heard).compareTo(noDataAfter) >= 0) {
      silent = true;
      tell(Condition.SILENT, noData());
    }
  }

  private void tell(Condition condition, LinkTrouble trouble) {
    state.become(condition, trouble);
    listener.trouble(trouble);
  }

  private LinkTrouble absent() {
    return new LinkTrouble(
        "simulated-absent",
        name + " is not plugged in: the station file's list of faults says so",
        "It is plugged in by itself when the fault unplugged is over");
  }

  private LinkTrouble nowLost() {
    return new LinkTrouble(
        "simulated-lost",
        name + " was unplugged: the station file's list of faults says so",
        "It is plugged in again by itself when the fault unplugged is over");
  }

  private LinkTrouble noData() {
    String seconds =
        BigDecimal.valueOf(noDataAfter.toMillis(), 3).stripTrailingZeros().toPlainString();
    return new LinkTrouble(
        "no-data",
        "%s has sent nothing for %s s: the station file's list of faults says so"
            .formatted(name, seconds),
        "It sends again by itself when the fault silent is over");
  }
}
