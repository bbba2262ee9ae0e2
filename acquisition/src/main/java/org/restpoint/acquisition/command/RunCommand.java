package org.restpoint.acquisition.command;

import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import org.restpoint.acquisition.log.Logs;
import org.restpoint.acquisition.service.Service;
import org.restpoint.acquisition.service.Surroundings;
import org.restpoint.config.station.Station;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

@Command(name = "run", description = "Runs the service until it is told to end.")
final class RunCommand implements Callable<Integer> {

  @Mixin private StationArgument station = new StationArgument();

  @Override
  public Integer call() throws InterruptedException {
    Station read = station.read();
    Logs.configure(read.logs());
    Service service = Service.start(read, Surroundings.real());
    Runtime.getRuntime()
        .addShutdownHook(
            new Thread(
                () -> {
                  service.close();
                  Runtime.getRuntime().halt(ExitStatus.DONE);
                },
                "end"));
    new CountDownLatch(1).await();
    return ExitStatus.DONE;
  }
}
