package org.restpoint.acquisition.service;

import java.nio.file.Path;

/** Where this user's Restpoint unpacks native libraries: below the temporary folder, one a user. */
public final class PrivateFolder {

  private PrivateFolder() {}

  /** The folder; it is made, for its owner alone, by whoever unpacks into it. */
  public static Path path() {
    String user = System.getProperty("user.name", "nobody").replaceAll("[^A-Za-z0-9._-]", "_");
    return Path.of(System.getProperty("java.io.tmpdir"), "restpoint-" + user);
  }
}
