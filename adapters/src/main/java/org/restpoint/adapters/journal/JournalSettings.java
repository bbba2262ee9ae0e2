package org.restpoint.adapters.journal;

import java.nio.file.Path;

/**
 * Where a journal is. Refuses, with an {@link IllegalArgumentException}, a path with a question
 * mark: the database driver would read what follows it as options.
 *
 * @param file the journal, one file; its folder must exist
 * @param nativeFolder a folder of the service's own, made if absent and kept to its owner (0700):
 *     the database library is unpacked into it
 */
public record JournalSettings(Path file, Path nativeFolder) {

  public JournalSettings {
    if (file.toString().indexOf('?') >= 0) {
      throw new IllegalArgumentException(
          "the journal's path %s has a question mark in it; choose a path without one"
              .formatted(file));
    }
    file = file.toAbsolutePath().normalize();
    nativeFolder = nativeFolder.toAbsolutePath().normalize();
  }
}
