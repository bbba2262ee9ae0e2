package org.restpoint.acquisition.demo;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.restpoint.acquisition.service.BrokerAddresses;
import org.restpoint.acquisition.service.PrivateFolder;
import org.restpoint.acquisition.service.Service;
import org.restpoint.acquisition.service.Surroundings;
import org.restpoint.acquisition.service.Topics;
import org.restpoint.acquisition.station.StationTerms;
import org.restpoint.adapters.journal.JournalReader;
import org.restpoint.adapters.journal.JournalSettings;
import org.restpoint.adapters.mqtt.BrokerAddress;
import org.restpoint.adapters.mqtt.BrokerException;
import org.restpoint.adapters.simulated.SimulatedLink;
import org.restpoint.config.file.StationFile;
import org.restpoint.config.station.LinkSettings;
import org.restpoint.config.station.Probe;
import org.restpoint.config.station.Station;

/**
 * The main job with nothing installed: the real service with a broker inside and a simulated bench,
 * in accelerated time.
 *
 * @param folder where station file and journal are left
 * @param port where the broker listens on loopback; 0 for a free port
 * @param speed how many times faster than at a real bench, above 0
 * @param start the time at the bench when it begins, a whole second
 */
public record Demo(Path folder, int port, double speed, Instant start) {

  private static final String PROBE = "no3-a";

  /** What is played on the bench. */
  interface Play {

    /** Plays it; gives what was found. */
    List<Finding> perform(Technician technician, Account account)
        throws BrokerException, InterruptedException;
  }

  /**
   * Plays it.
   *
   * @param program how this program is called, for the commands to go on with
   * @param out where the account goes
   * @return whether everything came out as the story says
   * @throws DemoException when it cannot start or cannot go on
   * @throws org.restpoint.acquisition.service.ServiceException when the service cannot start
   */
  public boolean play(String program, PrintWriter out) throws InterruptedException {
    return play(
        program, out, (technician, account) -> new Story(technician, account, start).play());
  }

  boolean play(String program, PrintWriter out, Play play) throws InterruptedException {
    Path privateFolder = PrivateFolder.path();
    Path file = new DemoFolder(folder, privateFolder).prepare(port);
    Station station = station(file);
    Terminal terminal = new Terminal(out);
    terminal.start();
    try {
      Account account = new Account(terminal::print);
      Played played = serve(station, file, privateFolder, account, play);
      Closing closing = new Closing(account, program, file);
      closing.tell(played.findings());
      return closing.judge(played.surprises());
    } finally {
      terminal.finish();
    }
  }

  private Played serve(Station station, Path file, Path privateFolder, Account account, Play play)
      throws InterruptedException {
    Probe probe = station.probes().get(PROBE);
    if (probe == null || !(probe.link() instanceof LinkSettings.Simulated simulated)) {
      throw new IllegalStateException("the demo's station has its simulated electrode");
    }
    BenchClock clock = new BenchClock(start, simulated.interval());
    Surroundings surroundings =
        new Surroundings(privateFolder, clock, System::nanoTime, speed, event -> {});
    try (Service service = Service.start(station, surroundings)) {
      SimulatedLink link = (SimulatedLink) service.link(PROBE).orElseThrow();
      clock.follow(link);
      BrokerAddress broker = broker(station, privateFolder);
      open(account, file, broker, station.name());
      Bench bench = new Bench(link, probe.electrode().orElseThrow());
      Topics topics = new Topics(station.name());
      try (Dialogue dialogue = Dialogue.open(broker, topics, PROBE, new Reporter(account))) {
        dialogue.state(state -> true);
        Technician technician = new Technician(bench, dialogue, account);
        List<Finding> findings = play.perform(technician, account);
        link.close();
        dialogue.hearOut();
        return new Played(findings, technician.surprises());
      }
    } catch (BrokerException e) {
      throw DemoException.brokenOff(String.valueOf(e.getMessage()));
    }
  }

  private record Played(List<Finding> findings, List<String> surprises) {}

  private static Station station(Path file) {
    StationFile.Outcome outcome = StationFile.read(file, StationTerms.vocabulary());
    if (outcome instanceof StationFile.Outcome.Understood understood) {
      return understood.station();
    }
    throw DemoException.notStarted(
        ((StationFile.Outcome.Refused) outcome).problems().get(0).text());
  }

  private static BrokerAddress broker(Station station, Path privateFolder) {
    try (JournalReader journal =
        new JournalReader(new JournalSettings(station.journal(), privateFolder))) {
      journal.start();
      return BrokerAddresses.found(station.broker(), journal.fact(Service.BROKER_FACT))
          .orElseThrow();
    }
  }

  private void open(Account account, Path file, BrokerAddress broker, String name) {
    account.say(
        "Restpoint demo: the service is real, the bench and all that is on it is invented.");
    account.line("");
    List<String> facts =
        List.of(
            "station   " + file,
            "broker    " + broker.url() + ", inside this program until the demo ends",
            "messages  on restpoint/" + name + "/#, for any MQTT client that wants to listen",
            "time      mm:ss at the bench, %.0f times as fast as on the wall".formatted(speed),
            ">         an instruction, sent to restpoint/" + name + "/" + PROBE + "/instruction");
    facts.forEach(account::line);
  }
}
