package org.restpoint.adapters.modbus;

import java.nio.file.Path;
import java.time.InstantSource;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.adapters.link.Link;
import org.restpoint.adapters.link.LinkListener;
import org.restpoint.adapters.serial.PortSettings;

@EnabledOnOs(OS.LINUX)
class ModbusRtuLinkContractTest extends ModbusLinkContract {

  @TempDir private Path folder;
  private DevicesOnWire line = NOTHING;

  @Override
  DevicesOnWire farEnd() {
    return line;
  }

  @Override
  protected Link createLink(LinkListener listener) throws Exception {
    bringBack();
    return ModbusBus.rtu(
            PortSettings.plain(folder.resolve("converter").toString(), 19_200),
            folder.resolve("native"),
            InstantSource.system(),
            System::nanoTime)
        .link(PROBE, listener);
  }

  @Override
  protected void takeAway() {
    line.close();
    line = NOTHING;
  }

  @Override
  protected void bringBack() throws Exception {
    line = new DevicesOnLine(devices, folder.resolve("converter"));
  }
}
