package org.restpoint.adapters.recording;

import java.nio.file.Path;

/**
 * What a recording link plays.
 *
 * @param file the recording
 * @param probe whose rows, as the file names it; the others are passed over. Of no consequence
 *     where the file does not say whose its rows are: then all of them are
 * @param layout how it is written
 */
public record RecordingSettings(Path file, String probe, RecordingLayout layout) {

  /** A recording in the native form. */
  public RecordingSettings(Path file, String probe) {
    this(file, probe, RecordingLayout.NATIVE);
  }
}
