package org.restpoint.acquisition.service;

import java.util.UUID;

/** Ids of the notices that the service itself gives: no replay gives them again. */
final class Notices {

  private Notices() {}

  static String newId(String probe) {
    return probe + "-notice-" + UUID.randomUUID();
  }
}
