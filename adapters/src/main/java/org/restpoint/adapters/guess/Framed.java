package org.restpoint.adapters.guess;

import java.util.List;
import org.restpoint.adapters.line.LineEncoding;
import org.restpoint.adapters.line.LineEnd;

/**
 * A sample cut into lines.
 *
 * @param end where its lines end
 * @param encoding how its characters are written
 * @param lines the whole lines, without their ends, in order
 */
public record Framed(LineEnd end, LineEncoding encoding, List<String> lines) {

  public Framed {
    lines = List.copyOf(lines);
  }
}
