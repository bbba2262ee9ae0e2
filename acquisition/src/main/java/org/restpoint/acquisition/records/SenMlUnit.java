package org.restpoint.acquisition.records;

import java.util.Optional;

/**
 * A primary unit of the SenML registry for a unit of ours. Milligrams per litre are not in the
 * registry; kilograms per cubic metre are (RFC 8798, section 2): 1 mg/L = 10^-3 kg/m3. A mass by
 * mass is a ratio, {@code /} (RFC 8428, section 12.1): 1 mg/kg = 10^-6. For moles per volume there
 * is none.
 *
 * @param symbol the registered symbol
 * @param powerOfTen the number is ours times ten to this power
 */
record SenMlUnit(String symbol, int powerOfTen) {

  static Optional<SenMlUnit> ofUcum(String code) {
    return switch (code) {
      case "mg/L" -> Optional.of(new SenMlUnit("kg/m3", -3));
      case "ug/L" -> Optional.of(new SenMlUnit("kg/m3", -6));
      case "mg/kg" -> Optional.of(new SenMlUnit("/", -6));
      case "ug/kg" -> Optional.of(new SenMlUnit("/", -9));
      case "[pH]" -> Optional.of(new SenMlUnit("pH", 0));
      default -> Optional.empty();
    };
  }
}
