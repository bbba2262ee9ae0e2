package org.restpoint.adapters.link;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;

/** Waits for what another thread brings about, where nothing can be taken from a queue. */
public final class Eventually {

  /** Far longer than anything takes, so that only what never comes fails. */
  private static final int PATIENCE_STEPS = 1_000;

  private static final long STEP_MILLIS = 20;

  private Eventually() {}

  /**
   * Waits until it is so.
   *
   * @param what what is waited for, for the failure's text
   * @throws AssertionError when it never comes so
   */
  public static void become(Object what, BooleanSupplier so) throws InterruptedException {
    for (int step = 0; step < PATIENCE_STEPS; step++) {
      if (so.getAsBoolean()) {
        return;
      }
      new CountDownLatch(1).await(STEP_MILLIS, TimeUnit.MILLISECONDS);
    }
    throw new AssertionError("it never came so: " + what);
  }
}
