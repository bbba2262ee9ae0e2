package org.restpoint.adapters.bus;

import java.time.Duration;
import java.time.InstantSource;
import java.util.concurrent.TimeUnit;
import org.restpoint.adapters.link.DeviceContract;
import org.restpoint.adapters.link.Link;
import org.restpoint.adapters.link.LinkListener;

/** A probe on a bus keeps the promises of every link; here over a wire in memory. */
class FakeWireLinkContractTest extends DeviceContract {

  private final FakeWire wire = new FakeWire();

  @Override
  protected Link createLink(LinkListener listener) {
    return new Bus(wire, InstantSource.system())
        .link(
            new PollSettings(
                "the made-up probe", Duration.ofMillis(1), Duration.ofMinutes(5), "Look at it"),
            new LineExchange("?", Duration.ofMinutes(5)),
            listener);
  }

  @Override
  protected void deliver(double millivolts) throws InterruptedException {
    answer(Double.toString(millivolts));
  }

  @Override
  protected void deliverBad() throws InterruptedException {
    answer("over");
  }

  private void answer(String line) throws InterruptedException {
    if (wire.asks.poll(100, TimeUnit.MILLISECONDS) != null) {
      wire.send(line + "\n");
    }
  }

  @Override
  protected void takeAway() {
    wire.unplug();
  }

  @Override
  protected void bringBack() {
    wire.plug();
  }
}
