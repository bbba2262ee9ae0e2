package org.restpoint.acquisition.command;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.restpoint.acquisition.service.PrivateFolder;
import org.restpoint.adapters.sdi12.Identification;
import org.restpoint.adapters.sdi12.SensorAddress;
import org.restpoint.adapters.sdi12.Visit;
import org.restpoint.adapters.sdi12.Visit.Found;
import org.restpoint.adapters.serial.PortSettings;
import org.restpoint.adapters.serial.SerialWireSource;
import org.restpoint.adapters.wire.Wire;
import org.restpoint.adapters.wire.WireSource.Attempt;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(
    name = "address",
    description =
        "Tells the address of the only SDI-12 sensor behind a converter, or gives a "
            + "sensor another one: with --from, --to and --yes, while no service has the port.")
final class AddressCommand implements Callable<Integer> {

  private static final Duration ANSWER_WITHIN = Duration.ofSeconds(1);
  private static final int RETRIES = 2;

  @Parameters(
      index = "0",
      paramLabel = "PORT",
      description = "The converter's serial port, e.g. /dev/ttyUSB0.")
  private String port = "";

  @Option(
      names = "--from",
      paramLabel = "ADDRESS",
      description = "The address that the sensor has: 0 to 9, A to Z or a to z.")
  private @Nullable Character from;

  @Option(names = "--to", paramLabel = "ADDRESS", description = "The address that it is to have.")
  private @Nullable Character to;

  @Option(names = "--yes", description = "Really change it.")
  private boolean yes;

  @Option(
      names = "--baud",
      paramLabel = "SPEED",
      defaultValue = "9600",
      description = "The speed of the converter's port; ${DEFAULT-VALUE} where left out.")
  private int baud;

  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public Integer call() throws InterruptedException {
    requireUsage(baud > 0, "--baud is above 0, not " + baud);
    requireUsage(!port.isBlank(), "PORT is the converter's serial port, e.g. /dev/ttyUSB0");
    Optional<SensorAddress> old = address("--from", from);
    Optional<SensorAddress> fresh = address("--to", to);
    requireUsage(
        old.isPresent() == fresh.isPresent(),
        "--from and --to go together: which address the sensor has, and which it is to have");
    requireUsage(old.isEmpty() || !old.equals(fresh), "--from and --to are the same address");
    requireUsage(
        old.isEmpty() || yes,
        "a sensor keeps its new address without power, and every station file that names it must"
            + " be changed: add --yes if sensor %s is to become %s".formatted(from, to));
    try (Wire wire = open()) {
      Visit visit = new Visit(wire, System::nanoTime, ANSWER_WITHIN, RETRIES);
      return old.isPresent() ? change(visit, old.get(), fresh.orElseThrow()) : tell(visit);
    }
  }

  private void requireUsage(boolean fits, String otherwise) {
    if (!fits) {
      throw new CommandException(ExitStatus.USAGE, otherwise);
    }
  }

  private Optional<SensorAddress> address(String option, @Nullable Character given) {
    if (given == null) {
      return Optional.empty();
    }
    requireUsage(
        SensorAddress.isOne(given),
        "%s is 0 to 9, A to Z or a to z, not %s".formatted(option, given));
    return Optional.of(new SensorAddress(given));
  }

  private Wire open() {
    Path folder = PrivateFolder.path();
    Attempt attempt = new SerialWireSource(PortSettings.plain(port, baud), folder).open(() -> {});
    if (attempt instanceof Attempt.Opened opened) {
      return opened.wire();
    }
    throw new CommandException(
        ExitStatus.NOT_STARTED, ((Attempt.Refused) attempt).trouble().sentences());
  }

  private int tell(Visit visit) {
    Found<SensorAddress> found = visit.onlyAddress();
    if (found instanceof Found.Here<SensorAddress> here) {
      say("sensor " + here.value() + described(visit, here.value()));
      return ExitStatus.DONE;
    }
    return found instanceof Found.Unclear<SensorAddress> unclear
        ? bad(unclear.reason() + ". Only one sensor may be on the bus for this: unplug the others")
        : bad("no sensor answers. Look at its three wires, its 12 V supply and --baud");
  }

  private static String described(Visit visit, SensorAddress address) {
    return visit.identify(address) instanceof Found.Here<Identification> here
        ? ": %s %s %s %s, SDI-12 version %s"
            .formatted(
                here.value().maker(),
                here.value().model(),
                here.value().release(),
                here.value().more(),
                here.value().version())
            .replaceAll(" +,", ",")
        : "";
  }

  private int change(Visit visit, SensorAddress old, SensorAddress fresh)
      throws InterruptedException {
    return switch (visit.change(old, fresh)) {
      case DONE -> {
        say("sensor %s is now sensor %s%s".formatted(old, fresh, described(visit, fresh)));
        yield ExitStatus.DONE;
      }
      case NOBODY ->
          bad(
              ("no sensor answers at %s; nothing was changed. Look at its wires, its 12 V supply and"
                      + " --baud")
                  .formatted(old));
      case TAKEN -> bad("a sensor answers at %s already; nothing was changed".formatted(fresh));
      case UNCLEAR ->
          bad(
              "what answers cannot be understood; nothing was changed. Look for two sensors with the"
                  + " same address, at the cable and at --baud");
      case NOT_CONFIRMED ->
          bad(
              ("sensor %s was told to become %s, and no sensor answers at %s. Look which address it"
                      + " has now: leave it alone on the bus and ask without --from and --to")
                  .formatted(old, fresh, fresh));
    };
  }

  private void say(String text) {
    PrintWriter out = spec.commandLine().getOut();
    out.println(text);
    out.flush();
  }

  private int bad(String text) {
    throw new CommandException(ExitStatus.BAD_OUTCOME, text);
  }
}
