package org.restpoint.adapters.modbus;

import java.time.InstantSource;
import org.restpoint.adapters.link.Link;
import org.restpoint.adapters.link.LinkListener;
import org.restpoint.adapters.wire.TcpAddress;

class ModbusTcpLinkContractTest extends ModbusLinkContract {

  private DevicesOnWire network = NOTHING;
  private int port;

  @Override
  DevicesOnWire farEnd() {
    return network;
  }

  @Override
  protected Link createLink(LinkListener listener) throws Exception {
    bringBack();
    return ModbusBus.tcp(
            new TcpAddress("127.0.0.1", port), InstantSource.system(), System::nanoTime)
        .link(PROBE, listener);
  }

  @Override
  protected void takeAway() {
    network.close();
    network = NOTHING;
  }

  @Override
  protected void bringBack() throws Exception {
    DevicesOnNetwork fresh = new DevicesOnNetwork(devices, port);
    port = fresh.port();
    network = fresh;
  }
}
