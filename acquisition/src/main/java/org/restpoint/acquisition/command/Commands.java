package org.restpoint.acquisition.command;

import java.io.PrintWriter;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeParseException;
import org.restpoint.acquisition.service.ServiceException;
import org.restpoint.adapters.journal.JournalException;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.TypeConversionException;

/** All commands. */
@Command(
    name = "restpoint",
    mixinStandardHelpOptions = true,
    version = "restpoint 0.1.0",
    description = "Reads ion-selective electrodes at rest and publishes calibrated concentrations.",
    footer = {
      "",
      "Exit status: 0 done; 2 wrong usage; 3 station file refused; 4 could not start;",
      "5 the work ran and its outcome is bad."
    },
    subcommands = {
      AddressCommand.class,
      BatchCommand.class,
      CheckCommand.class,
      DemoCommand.class,
      ListenCommand.class,
      PortsCommand.class,
      RecordsCommand.class,
      ReplayCommand.class,
      RunCommand.class,
      SamplesCommand.class,
      SlipCommand.class,
      TellCommand.class,
    })
public final class Commands {

  private Commands() {}

  /** The command line. */
  public static CommandLine line() {
    CommandLine line = new CommandLine(new Commands());
    line.getSubcommands()
        .values()
        .forEach(command -> command.getCommandSpec().mixinStandardHelpOptions(true));
    line.registerConverter(Instant.class, Commands::instant);
    line.registerConverter(ZoneId.class, Commands::zone);
    line.setExecutionExceptionHandler(Commands::told);
    return line;
  }

  private static Instant instant(String text) {
    try {
      return Instant.parse(text);
    } catch (DateTimeParseException e) {
      throw new TypeConversionException(
          "expected a time by ISO 8601 in UTC, like 2026-04-02T14:03:00Z; found " + text);
    }
  }

  private static ZoneId zone(String text) {
    try {
      return ZoneId.of(text);
    } catch (DateTimeException e) {
      throw new TypeConversionException(
          "expected a time zone, like America/Chicago or -05:00; found " + text);
    }
  }

  /** A person's mistake is told in a sentence; only a defect shows where it happened. */
  private static int told(Exception thrown, CommandLine line, ParseResult parsed) throws Exception {
    PrintWriter err = line.getErr();
    if (thrown instanceof CommandException e) {
      err.println("restpoint: " + e.getMessage());
      return e.exitStatus();
    }
    if (thrown instanceof ServiceException || thrown instanceof JournalException) {
      err.println("restpoint: " + thrown.getMessage());
      return ExitStatus.NOT_STARTED;
    }
    throw thrown;
  }
}
