package org.restpoint.adapters.recording;

import java.nio.file.Path;

/**
 * What a recording link plays.
 *
 * @param file the recording
 * @param probe whose rows; the others are passed over
 */
public record RecordingSettings(Path file, String probe) {}
