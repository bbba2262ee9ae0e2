package org.restpoint.acquisition.probe;

import java.util.Optional;
import org.restpoint.acquisition.event.Result;

/** What a station has published before, as its journal or a replay keeps it. */
public interface Archive {

  /** The latest revision of a result that an instruction asked for; empty where none is kept. */
  Optional<Result> result(String id);

  /** One that keeps nothing. */
  static Archive empty() {
    return id -> Optional.empty();
  }
}
