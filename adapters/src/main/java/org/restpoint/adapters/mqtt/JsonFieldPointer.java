package org.restpoint.adapters.mqtt;

import com.fasterxml.jackson.core.JsonPointer;

/** The check that settings make of a JSON pointer (RFC 6901). */
final class JsonFieldPointer {

  private JsonFieldPointer() {}

  static void require(String pointer) {
    try {
      JsonPointer.compile(pointer);
    } catch (IllegalArgumentException e) {
      throw new IllegalArgumentException(
          "expected a JSON pointer such as /mv or /data/0/mv, found " + pointer, e);
    }
  }
}
