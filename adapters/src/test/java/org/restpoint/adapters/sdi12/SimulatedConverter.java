package org.restpoint.adapters.sdi12;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.jna.LastErrorException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import org.restpoint.adapters.serial.PseudoTerminal;

/**
 * A converter of our own making with sensors on its bus, behind a real terminal. Linux only. Its
 * sensors are added before it is plugged in.
 */
public final class SimulatedConverter implements AutoCloseable {

  /** EIO: what a terminal's other end says while nobody has it open. */
  private static final int INPUT_OUTPUT_ERROR = 5;

  private static final int LISTEN_MILLIS = 5;

  private final Path port;
  private final SimulatedBus bus = new SimulatedBus(System::nanoTime);
  private final CountDownLatch closing = new CountDownLatch(1);
  private final Thread thread = new Thread(this::run, "simulated converter");
  private final Semaphore there = new Semaphore(0);
  private volatile boolean plugged;
  private final AtomicReference<String> unasked = new AtomicReference<>("");

  /**
   * @param port the symbolic link by which the port is found while it is plugged in
   */
  public SimulatedConverter(Path port) {
    this.port = port;
  }

  /** Adds a sensor that measures these values. */
  public SimulatedSensor sensor(char address, double... values) {
    SimulatedSensor sensor = new SimulatedSensor(address, values);
    bus.add(sensor);
    return sensor;
  }

  /** Sends every command back. */
  public void echoes() {
    bus.echoes(true);
  }

  /** All commands that it was sent. */
  public List<String> commands() {
    return bus.commands();
  }

  /** Sends this once, without being asked. */
  void sends(String text) {
    unasked.set(text);
  }

  /** It is there from now on; returns when it can be opened. */
  public void plug() throws InterruptedException {
    plugged = true;
    if (!thread.isAlive()) {
      thread.setDaemon(true);
      thread.start();
    }
    there.acquire();
  }

  /** It is gone from now on, until it is plugged in again. */
  void unplug() {
    plugged = false;
  }

  private void run() {
    try {
      while (closing.getCount() > 0) {
        if (plugged) {
          serve();
        } else {
          closing.await(LISTEN_MILLIS, TimeUnit.MILLISECONDS);
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private void serve() throws IOException, InterruptedException {
    try (PseudoTerminal device = new PseudoTerminal()) {
      device.linkedAs(port);
      there.release();
      while (plugged && closing.getCount() > 0) {
        try {
          bus.take(device.receive(LISTEN_MILLIS));
          String text = unasked.getAndSet("") + bus.due();
          if (!text.isEmpty()) {
            device.send(text);
          }
        } catch (LastErrorException nobodyHasItOpen) {
          assertThat(nobodyHasItOpen.getErrorCode()).isEqualTo(INPUT_OUTPUT_ERROR);
          closing.await(LISTEN_MILLIS, TimeUnit.MILLISECONDS);
        }
      }
    }
  }

  @Override
  public void close() {
    closing.countDown();
    try {
      thread.join();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
