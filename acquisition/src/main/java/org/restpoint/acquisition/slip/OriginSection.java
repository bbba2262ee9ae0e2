package org.restpoint.acquisition.slip;

import org.restpoint.acquisition.event.Result;

/** By what the result is found again. */
final class OriginSection {

  private OriginSection() {}

  static Slip.Section of(Result result) {
    return new Parts("Where it comes from")
        .fact("Station", result.station())
        .fact("Result", result.id())
        .fact("Revision", String.valueOf(result.revision()))
        .section();
  }
}
