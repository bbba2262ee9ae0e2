package org.restpoint.stability.guidance;

import java.util.Optional;

/** How a number stands to what it is of. */
public enum Relation {
  /** It is that much, within its uncertainty. */
  EQUAL("="),
  /** It is less: the number is the limit below which none is told. */
  BELOW("<"),
  /** It is more: the number is the limit above which none is told. */
  ABOVE(">");

  private final String sign;

  Relation(String sign) {
    this.sign = sign;
  }

  /** How it is written in messages. */
  public String sign() {
    return sign;
  }

  /** The relation written so, if there is one. */
  public static Optional<Relation> ofSign(String sign) {
    for (Relation relation : values()) {
      if (relation.sign.equals(sign)) {
        return Optional.of(relation);
      }
    }
    return Optional.empty();
  }
}
