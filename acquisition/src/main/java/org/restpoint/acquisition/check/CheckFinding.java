package org.restpoint.acquisition.check;

import java.util.List;
import org.restpoint.acquisition.event.Result.Verification;

/**
 * What a check showed.
 *
 * @param verification as its result tells it
 * @param flags what its result is flagged with; empty where it passed
 */
public record CheckFinding(Verification verification, List<String> flags) {

  public CheckFinding {
    flags = List.copyOf(flags);
  }
}
