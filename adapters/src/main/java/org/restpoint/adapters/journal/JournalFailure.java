package org.restpoint.adapters.journal;

import java.nio.file.Path;
import java.sql.SQLException;
import org.restpoint.adapters.journal.JournalException.Kind;

/** Puts what the database reports into a person's words. */
final class JournalFailure {

  /**
   * Primary result codes, https://www.sqlite.org/rescode.html; the low byte of an extended code.
   */
  private static final int BUSY = 5;

  private static final int READONLY = 8;
  private static final int IOERR = 10;
  private static final int CORRUPT = 11;
  private static final int FULL = 13;
  private static final int CANTOPEN = 14;
  private static final int NOTADB = 26;

  private JournalFailure() {}

  /** The exception to throw for a failure with this journal. */
  static JournalException of(SQLException failure, Path file) {
    return switch (failure.getErrorCode() & 0xff) {
      case NOTADB -> notAJournal(file, failure);
      case CORRUPT ->
          new JournalException(
              Kind.NOT_A_JOURNAL,
              "the journal %s is damaged; put it aside and take the last copy, or name a new file"
                  .formatted(file),
              failure);
      case FULL ->
          new JournalException(
              Kind.FULL,
              "the disk with the journal %s is full; nothing of this was written; free some space"
                  .formatted(file),
              failure);
      case IOERR ->
          new JournalException(
              Kind.FAILED,
              "the disk with the journal %s failed to read or write; see whether it is full, gone or broken"
                  .formatted(file),
              failure);
      case BUSY ->
          new JournalException(
              Kind.HELD,
              "another program keeps the journal %s locked; close what has it open and try again"
                  .formatted(file),
              failure);
      case READONLY ->
          new JournalException(
              Kind.FOLDER,
              "the journal %s may not be written; let the service's user write it and its folder"
                  .formatted(file),
              failure);
      case CANTOPEN ->
          new JournalException(
              Kind.FOLDER,
              "the journal %s cannot be opened; let the service's user read and write it and its folder"
                  .formatted(file),
              failure);
      default ->
          new JournalException(
              Kind.FAILED,
              "the journal %s failed: %s".formatted(file, failure.getMessage()),
              failure);
    };
  }

  /** The exception for a file that is something else. */
  static JournalException notAJournal(Path file, SQLException failure) {
    return new JournalException(Kind.NOT_A_JOURNAL, notAJournalText(file), failure);
  }

  /** The words for a file that is something else. */
  static String notAJournalText(Path file) {
    return "%s is not a Restpoint journal and was left as it is; name another file".formatted(file);
  }
}
