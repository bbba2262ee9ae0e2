package org.restpoint.acquisition.command;

import java.io.PrintWriter;
import java.net.URI;
import java.nio.file.Path;
import java.time.Duration;
import java.time.InstantSource;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.Callable;
import org.restpoint.acquisition.listen.Ask;
import org.restpoint.acquisition.listen.Outcome;
import org.restpoint.acquisition.listen.PortListening;
import org.restpoint.acquisition.listen.Setting;
import org.restpoint.acquisition.listen.TopicListening;
import org.restpoint.acquisition.service.BrokerAddresses;
import org.restpoint.acquisition.service.PrivateFolder;
import org.restpoint.adapters.mqtt.BrokerAddress;
import org.restpoint.adapters.mqtt.Eavesdropper;
import org.restpoint.adapters.serial.PortSettings.Parity;
import org.restpoint.adapters.serial.SerialPorts;
import org.restpoint.adapters.serial.SerialWireSource;
import org.restpoint.config.station.Broker;
import picocli.CommandLine.Command;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import picocli.CommandLine.TypeConversionException;

@Command(
    name = "listen",
    description =
        "Shows what a serial port or a topic sends, raw and as it can be read, and prints a section"
            + " for the station file on standard output. Nothing is sent to a meter unless --ask says"
            + " what.",
    footer = {
      "",
      "restpoint listen /dev/ttyUSB0 >> station.yaml",
      "restpoint listen --topic bench/# --broker tcp://127.0.0.1:1883 >> station.yaml"
    })
final class ListenCommand implements Callable<Integer> {

  @Parameters(
      index = "0",
      arity = "0..1",
      paramLabel = "PORT",
      description = "the serial port; which there are tells: restpoint ports")
  private String port = "";

  @Option(
      names = "--baud",
      paramLabel = "N",
      description = "bits a second (default: ${DEFAULT-VALUE})")
  private int baud = 9600;

  @Option(names = "--data-bits", paramLabel = "N", description = "7 or 8 (default: 8)")
  private int dataBits = 8;

  @Option(
      names = "--parity",
      paramLabel = "PARITY",
      converter = ParityName.class,
      description = "none, even, odd, mark or space (default: none)")
  private Parity parity = Parity.NONE;

  @Option(
      names = "--try",
      description = "try the usual speeds and framings first; sends nothing meanwhile")
  private boolean tries;

  @Option(
      names = "--ask",
      paramLabel = "TEXT",
      description =
          "send this again and again, for a meter that waits to be asked; \\r, \\n, \\t, \\\\ and"
              + " \\x1B stand for what they name. Without it nothing is ever sent")
  private Optional<String> ask = Optional.empty();

  @Option(
      names = "--every",
      paramLabel = "TIME",
      converter = Span.class,
      description = "with --ask: how often (default: 1s)")
  private Duration every = Duration.ofSeconds(1);

  @Option(
      names = "--topic",
      paramLabel = "TOPIC",
      description = "listen to this topic instead of a port; + and # are allowed")
  private String topic = "";

  @Option(
      names = "--broker",
      paramLabel = "URL",
      description = "with --topic: where (default: ${DEFAULT-VALUE})")
  private URI broker = URI.create("tcp://127.0.0.1:1883");

  @Option(names = "--user", paramLabel = "NAME", description = "with --topic: the broker's user")
  private Optional<String> user = Optional.empty();

  @Option(
      names = "--password-file",
      paramLabel = "FILE",
      description = "with --user: a file whose first line is the password")
  private Optional<Path> passwordFile = Optional.empty();

  @Option(
      names = "--for",
      paramLabel = "TIME",
      converter = Span.class,
      description = "how long to listen at most, as 20s or 2min (default: 20s)")
  private Duration limit = Duration.ofSeconds(20);

  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public Integer call() throws InterruptedException {
    requireUsage();
    try (Interruption interruption = new Interruption()) {
      return told(topic.isEmpty() ? port(interruption) : topic(interruption));
    }
  }

  private Outcome port(Interruption interruption) {
    PortListening listening =
        new PortListening(
            SerialPorts.stableName(port),
            asked(),
            setting -> new SerialWireSource(setting.of(port), PrivateFolder.path()),
            this::show,
            interruption::isTold,
            System::nanoTime);
    return tries
        ? listening.tryAndListen(limit)
        : listening.listen(new Setting(baud, dataBits, parity), limit);
  }

  private Outcome topic(Interruption interruption) throws InterruptedException {
    String clientId = "restpoint-listen-" + UUID.randomUUID();
    try (Eavesdropper ear =
        new Eavesdropper(address(), clientId, InstantSource.system(), System::nanoTime)) {
      return new TopicListening(
              topic, broker.toString(), this::show, interruption::isTold, System::nanoTime)
          .listen(ear, limit);
    }
  }

  private BrokerAddress address() {
    try {
      return BrokerAddresses.remote(new Broker.Remote(broker, user, passwordFile));
    } catch (IllegalArgumentException e) {
      throw usage("--broker: " + e.getMessage());
    }
  }

  private void show(String line) {
    PrintWriter err = spec.commandLine().getErr();
    err.println(line);
    err.flush();
  }

  private void requireUsage() {
    if (port.isBlank() == topic.isBlank()) {
      throw usage("expected a PORT, or --topic and --broker");
    }
    if (baud <= 0 || (dataBits != 7 && dataBits != 8)) {
      throw usage("expected --baud above 0 and --data-bits 7 or 8");
    }
    if (!topic.isEmpty() && (tries || ask.isPresent())) {
      throw usage("--try and --ask are for a port, not for a topic");
    }
    if (tries && ask.isPresent()) {
      throw usage("--try sends nothing: find the speed first, then --ask with --baud");
    }
  }

  private ParameterException usage(String text) {
    return new ParameterException(spec.commandLine(), text);
  }

  private Optional<Ask> asked() {
    try {
      return ask.map(text -> Ask.typed(text, every));
    } catch (IllegalArgumentException e) {
      throw usage("--ask: " + e.getMessage());
    }
  }

  private int told(Outcome outcome) {
    if (outcome instanceof Outcome.NotOpened notOpened) {
      throw new CommandException(ExitStatus.NOT_STARTED, notOpened.words());
    }
    if (outcome instanceof Outcome.Understood understood) {
      PrintWriter out = spec.commandLine().getOut();
      understood.section().forEach(out::println);
      out.flush();
      show(
          "put the section into the station file, fill in what stands in comments, and then: restpoint check STATION");
      return ExitStatus.DONE;
    }
    return ExitStatus.BAD_OUTCOME;
  }

  /** The names of the station file. */
  static final class ParityName implements ITypeConverter<Parity> {

    @Override
    public Parity convert(String name) {
      return Arrays.stream(Parity.values())
          .filter(parity -> parity.name().toLowerCase(Locale.ROOT).equals(name))
          .findFirst()
          .orElseThrow(
              () ->
                  new TypeConversionException(
                      "expected none, even, odd, mark or space; found " + name));
    }
  }
}
