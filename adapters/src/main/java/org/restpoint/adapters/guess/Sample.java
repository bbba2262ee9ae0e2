package org.restpoint.adapters.guess;

import java.io.ByteArrayOutputStream;
import java.util.List;

/**
 * Bytes of a device as they came.
 *
 * @param bursts what came without a pause of a tenth of a second or more within it, in order
 * @param wholeFromTheStart whether a quiet moment came before the first byte, so that a line begins
 *     with it
 */
public record Sample(List<byte[]> bursts, boolean wholeFromTheStart) {

  public Sample {
    bursts = bursts.stream().filter(burst -> burst.length > 0).map(byte[]::clone).toList();
  }

  /** All bytes, one after the other. */
  public byte[] bytes() {
    ByteArrayOutputStream all = new ByteArrayOutputStream();
    bursts.forEach(all::writeBytes);
    return all.toByteArray();
  }
}
