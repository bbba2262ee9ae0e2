package org.restpoint.adapters.recording;

import java.time.Instant;
import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Holds the times of rows against those before them: in the native form against all of them, since
 * the service writes them in order; in any other form against those of the same probe.
 */
final class RowClock {

  /** Far more than stand in one file, so that a file of garbage does not fill the memory. */
  private static final int MOST_PROBES = 1_000;

  /** Before any time, with room to go back a span from there. */
  private static final long BEFORE_ALL = Long.MIN_VALUE / 2;

  private final boolean oneForAll;
  private final @Nullable NearClock near;
  private final Map<String, Latest> probes = new HashMap<>();
  private Latest latest = new Latest();
  private TimeField.@Nullable Form form;
  private TimeField.@Nullable Form offeredForm;
  private long latestOfAll = BEFORE_ALL;
  private long millis;
  private Skip skip = Skip.TIME_BACK;
  private String fault = "";

  /**
   * @param near what times are held against besides; null for a file of old
   */
  RowClock(RecordingLayout layout, @Nullable NearClock near) {
    this.near = near;
    this.oneForAll = layout.isNative() || !layout.hasProbes();
  }

  /** Whether a row of a probe may have this time; what it then is, or why not, is kept. */
  boolean fits(String probe, TimeText time) {
    if (time instanceof TimeField either && !fitsForm(either.form())) {
      return false;
    }
    if (!oneForAll) {
      Latest own = probes.get(probe);
      if (own == null) {
        if (probes.size() == MOST_PROBES) {
          return refuse(Skip.PROBE, "more than %d probes in one file".formatted(MOST_PROBES));
        }
        own = new Latest();
        probes.put(probe, own);
      }
      latest = own;
    }
    millis = time.epochMillis();
    if (cannotBe(millis)) {
      millis = time.laterMillis();
    }
    return isNew() && goesOn();
  }

  /** Whether a time is behind the probe's rows, too far behind the others' or off the clock. */
  private boolean cannotBe(long earlier) {
    return earlier < latest.millis
        || earlier < latestOfAll - InTimeOrder.SPAN_MILLIS
        || (near != null && !near.isNear(earlier));
  }

  private boolean isNew() {
    if (near == null) {
      return true;
    }
    if (near.wasRead(millis)) {
      return refuse(Skip.READ_BEFORE, "the row was read before");
    }
    return near.isNear(millis) || refuse(Skip.TIME_OFF, near.off(millis));
  }

  private boolean goesOn() {
    return millis >= latest.millis
        || refuse(
            Skip.TIME_BACK,
            "the time %s goes back behind %s of a row before it"
                .formatted(Instant.ofEpochMilli(millis), Instant.ofEpochMilli(latest.millis)));
  }

  private boolean fitsForm(TimeField.Form offered) {
    offeredForm = offered;
    return form == null
        || form == offered
        || refuse(
            Skip.TIME,
            offered == TimeField.Form.SECONDS
                ? "the time is in seconds, in the rows before it it is ISO 8601"
                : "the time is ISO 8601, in the rows before it it is in seconds");
  }

  private boolean refuse(Skip why, String words) {
    skip = why;
    fault = words;
    return false;
  }

  /** The time of the row that fits. */
  long millis() {
    return millis;
  }

  /** The row that fits is a reading. */
  void accepted() {
    latest.millis = millis;
    latestOfAll = Math.max(latestOfAll, millis);
    form = offeredForm;
  }

  Skip skip() {
    return skip;
  }

  String fault() {
    return fault;
  }

  /** The latest time of one probe. */
  private static final class Latest {
    private long millis = Long.MIN_VALUE;
  }
}
