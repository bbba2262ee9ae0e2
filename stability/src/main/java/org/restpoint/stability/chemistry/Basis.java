package org.restpoint.stability.chemistry;

import java.util.Optional;

/** What the mass in a mass concentration is the mass of. */
public enum Basis {
  /** The whole ion, e.g. NO₃⁻. */
  AS_ION("as-ion"),
  /** The nitrogen in it, as growers and drinking-water law in the United States give nitrate. */
  AS_N("as-N");

  private final String code;

  Basis(String code) {
    this.code = code;
  }

  /** How the basis is written in station files and messages. */
  public String code() {
    return code;
  }

  /** The basis written so, if there is one. */
  public static Optional<Basis> ofCode(String code) {
    for (Basis basis : values()) {
      if (basis.code.equals(code)) {
        return Optional.of(basis);
      }
    }
    return Optional.empty();
  }
}
