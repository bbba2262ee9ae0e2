package org.restpoint.adapters.modbus;

import java.time.Duration;
import java.util.Optional;
import org.restpoint.adapters.quantity.Meaning;
import org.restpoint.adapters.quantity.PotentialScale;

/** Settings of probes for tests: one potential of double precision in input registers. */
final class ModbusProbes {

  private ModbusProbes() {}

  static ModbusSettings probe(int unit, int address, Duration answerWithin, int retries) {
    return new ModbusSettings(
        unit,
        Optional.of(Registers.plain(NumberType.FLOAT64, address)),
        Optional.empty(),
        new Meaning(Optional.of(PotentialScale.MILLIVOLTS), Optional.empty()),
        Duration.ofMillis(1),
        answerWithin,
        retries,
        Duration.ofMinutes(5));
  }
}
