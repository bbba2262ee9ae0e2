package org.restpoint.adapters.recording;

import org.jspecify.annotations.Nullable;

/** A recording that cannot be read or written as a whole; the message is for a person. */
public final class RecordingException extends RuntimeException {

  private static final long serialVersionUID = 1L;

  RecordingException(String message, @Nullable Throwable cause) {
    super(message, cause);
  }
}
