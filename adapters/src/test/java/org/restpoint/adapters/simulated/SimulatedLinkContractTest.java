package org.restpoint.adapters.simulated;

import java.time.Duration;
import java.time.InstantSource;
import org.restpoint.adapters.link.Link;
import org.restpoint.adapters.link.LinkContract;
import org.restpoint.adapters.link.LinkListener;
import org.restpoint.stability.reading.Reading;

/** An electrode at rest, without noise. It is made with the link and so is never absent. */
class SimulatedLinkContractTest extends LinkContract {

  private static final double AT_REST_MILLIVOLTS = 318.32;

  @Override
  protected Link createLink(LinkListener listener) {
    return new SimulatedLink(
        new SimulatedSettings(
            ElectrodeTraits.of(100.0, 200.0, -1, Duration.ofSeconds(1), 0.0, 1),
            new Beaker(1e-2, 25.0),
            Duration.ofMillis(5),
            1),
        listener,
        InstantSource.system(),
        System::nanoTime);
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
