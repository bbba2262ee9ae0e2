package org.restpoint.adapters.serial;

import org.restpoint.adapters.wire.Wire;

/** An open port whose owner is told when the process ends. */
final class FarewellWire implements Wire {

  private final SerialDevice device;

  FarewellWire(SerialDevice device, Runnable farewell) {
    this.device = device;
    SerialFarewell.add(this, farewell);
  }

  @Override
  public int read(byte[] into) {
    return device.read(into);
  }

  @Override
  public boolean write(byte[] bytes) {
    return device.write(bytes);
  }

  @Override
  public void discardInput() {
    device.discardInput();
  }

  @Override
  public void close() {
    SerialFarewell.remove(this);
    device.close();
  }
}
