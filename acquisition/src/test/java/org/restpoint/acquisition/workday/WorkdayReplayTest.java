package org.restpoint.acquisition.workday;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The recorded working day through {@code replay}; live it is {@link WorkdayIT}. */
class WorkdayReplayTest {

  @TempDir private Path folder;

  @Test
  void everySampleComesOutAsTheTableSaysThatWasWorkedOutByHand() {
    Heard heard = Replayed.plan(folder, Workday.of(folder));
    heard.assertSamples();
    heard.assertEvents(List.of("interrupted"));
  }
}
