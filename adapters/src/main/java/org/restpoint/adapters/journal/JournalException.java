package org.restpoint.adapters.journal;

import org.jspecify.annotations.Nullable;

/** A journal that cannot be used; the message is for a person: what, where, what to do. */
public final class JournalException extends RuntimeException {

  private static final long serialVersionUID = 1L;

  /** What kind of trouble it is. */
  public enum Kind {
    /** There is no journal at the path. */
    ABSENT,
    /** The journal's folder is missing or does not let itself be written. */
    FOLDER,
    /** The file is something else, or damaged. */
    NOT_A_JOURNAL,
    /** The file was written by a newer Restpoint. */
    NEWER,
    /** Another running service writes this journal. */
    HELD,
    /** The disk is full. */
    FULL,
    /** Something with the same identity is there already; nothing of the batch was written. */
    DUPLICATE,
    /** The journal is not started, or closed. */
    CLOSED,
    /** Anything else: the disk or the database failed. */
    FAILED
  }

  private final Kind kind;

  JournalException(Kind kind, String message) {
    this(kind, message, null);
  }

  JournalException(Kind kind, String message, @Nullable Throwable cause) {
    super(message, cause);
    this.kind = kind;
  }

  /** What kind of trouble it is. */
  public Kind kind() {
    return kind;
  }
}
