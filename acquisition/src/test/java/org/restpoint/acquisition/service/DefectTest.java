package org.restpoint.acquisition.service;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.InstantSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A defect of the service's own ends it rather than that it goes on and decides nothing. */
@Timeout(60)
class DefectTest {

  @TempDir private Path folder;

  @Test
  void whatIsThrownWhereNothingShouldBeIsToldToWhoeverRunsTheService() throws Exception {
    IllegalStateException planted = new IllegalStateException("planted");
    Surroundings surroundings =
        new Surroundings(
            folder.resolve("native"),
            InstantSource.system(),
            System::nanoTime,
            1,
            event -> {
              throw planted;
            });
    try (Service service = Service.start(Stations.brook(folder), surroundings)) {
      assertThat(service.awaitDefect()).isSameAs(planted);
    }
  }
}
