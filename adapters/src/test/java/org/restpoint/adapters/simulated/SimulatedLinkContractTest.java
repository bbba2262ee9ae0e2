package org.restpoint.adapters.simulated;

import java.time.Duration;
import java.time.InstantSource;
import java.util.List;
import java.util.concurrent.atomic.AtomicLong;
import org.restpoint.adapters.link.AbsentSourceContract;
import org.restpoint.adapters.link.Link;
import org.restpoint.adapters.link.LinkListener;
import org.restpoint.stability.reading.Reading;

/**
 * An electrode at rest, without noise, that is plugged in with its second reading. While the clock
 * that paces the link stands still, the second reading does not come.
 */
class SimulatedLinkContractTest extends AbsentSourceContract {

  private static final double AT_REST_MILLIVOLTS = 318.32;
  private static final long RUNNING = -1;
  private static final Duration INTERVAL = Duration.ofMillis(5);

  private final AtomicLong stoodStillAt = new AtomicLong(RUNNING);

  @Override
  protected Link createLink(LinkListener listener) {
    return new SimulatedLink(
        new SimulatedSettings(
            new Subject.Electrode(
                ElectrodeTraits.of(100.0, 200.0, -1, Duration.ofSeconds(1), 0.0, 1),
                List.of(Visit.forGood(new Beaker(1e-2, 25.0))),
                Swing.NONE),
            INTERVAL,
            Duration.ofSeconds(30),
            List.of(ScheduledFault.once(new Fault.Unplugged(), Duration.ZERO, INTERVAL)),
            1),
        listener,
        InstantSource.system(),
        this::nanos);
  }

  private long nanos() {
    long stands = stoodStillAt.get();
    return stands == RUNNING ? System.nanoTime() : stands;
  }

  @Override
  protected void takeAway() {
    stoodStillAt.set(System.nanoTime());
  }

  @Override
  protected void bringBack() {
    stoodStillAt.set(RUNNING);
  }

  @Override
  protected void deliver(double millivolts) {
    // The next reading comes when it is its time.
  }

  @Override
  protected boolean sends(Reading reading, double delivered) {
    return reading.millivolts().getAsDouble() == AT_REST_MILLIVOLTS
        && reading.celsius().getAsDouble() == 25.0;
  }
}
