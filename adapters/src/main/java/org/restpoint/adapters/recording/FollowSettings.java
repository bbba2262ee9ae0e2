package org.restpoint.adapters.recording;

import java.nio.file.Path;
import java.time.Duration;

/**
 * How a growing recording is followed. Refuses, with an {@link IllegalArgumentException}, a span
 * that is not above zero and a layout that gives no times to recorded stamps.
 *
 * @param file the recording, which need not be there yet
 * @param probe whose rows, as for {@link RecordingSettings}
 * @param layout how it is written
 * @param fromStart whether rows that stand in it already are read too
 * @param stamp which time a reading is given
 * @param noDataAfter silence longer than this is told
 */
public record FollowSettings(
    Path file,
    String probe,
    RecordingLayout layout,
    boolean fromStart,
    Stamp stamp,
    Duration noDataAfter) {

  public FollowSettings {
    if (noDataAfter.isZero() || noDataAfter.isNegative()) {
      throw new IllegalArgumentException("expected a span above zero, found " + noDataAfter);
    }
    if (stamp instanceof Stamp.OnArrival) {
      layout = layout.withoutTime();
    } else if (layout.columns().time().isEmpty()
        || layout.time() instanceof TimeForm.SecondsFromZero) {
      throw new IllegalArgumentException(
          "a file without times of day is followed with stamps on arrival");
    }
  }
}
