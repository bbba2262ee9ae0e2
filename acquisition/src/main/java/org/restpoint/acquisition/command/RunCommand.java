package org.restpoint.acquisition.command;

import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.restpoint.acquisition.log.Logs;
import org.restpoint.acquisition.service.Service;
import org.restpoint.acquisition.service.Surroundings;
import org.restpoint.config.station.Station;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

@Command(name = "run", description = "Runs the service until it is told to end.")
final class RunCommand implements Callable<Integer> {

  private static final Logger LOG = LoggerFactory.getLogger(RunCommand.class);

  /** Of the 5 s that are promised. */
  private static final Duration CLOSE_WITHIN = Duration.ofMillis(4500);

  @Mixin private StationArgument station = new StationArgument();

  private volatile int exitStatus = ExitStatus.DONE;

  @Override
  public Integer call() throws InterruptedException {
    Station read = station.read();
    Logs.configure(read.logs());
    CompletableFuture<Optional<Service>> started = new CompletableFuture<>();
    Runtime.getRuntime().addShutdownHook(new Thread(() -> end(started), "end"));
    try {
      Service service = Service.start(read, Surroundings.real());
      started.complete(Optional.of(service));
      Throwable defect = service.awaitDefect();
      exitStatus = ExitStatus.DEFECT;
      throw new IllegalStateException(
          "the service has ended by a defect of its own; what was committed is in the journal."
              + " Start it again, and report the lines below",
          defect);
    } finally {
      // Where it has started this changes nothing.
      started.complete(Optional.empty());
    }
  }

  /** Ends in order, or without what hangs: what was committed is on disk either way. */
  private void end(CompletableFuture<Optional<Service>> started) {
    long deadline = System.nanoTime() + CLOSE_WITHIN.toNanos();
    Optional<Service> service =
        started
            .completeOnTimeout(Optional.empty(), CLOSE_WITHIN.toMillis(), TimeUnit.MILLISECONDS)
            .join();
    if (service.isEmpty()) {
      // It has not started, and the process ends with the status that says so.
      return;
    }
    Thread closing = new Thread(service.get()::close, "close");
    closing.setDaemon(true);
    closing.start();
    try {
      closing.join(Math.max(1, TimeUnit.NANOSECONDS.toMillis(deadline - System.nanoTime())));
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    if (closing.isAlive()) {
      LOG.warn("not everything ended in time; what was committed is in the journal");
    }
    Runtime.getRuntime().halt(exitStatus);
  }
}
