package org.restpoint.acquisition.command;

import java.util.ArrayList;
import java.util.List;
import org.restpoint.acquisition.probe.Words;
import org.restpoint.config.station.Broker;
import org.restpoint.config.station.Care;
import org.restpoint.config.station.Electrode;
import org.restpoint.config.station.LinkSettings;
import org.restpoint.config.station.Moves;
import org.restpoint.config.station.Probe;
import org.restpoint.config.station.Routine;
import org.restpoint.config.station.Settle;
import org.restpoint.config.station.StandardSolution;
import org.restpoint.config.station.Station;
import org.restpoint.config.station.TemperatureSource;

/** Says back what a station file was understood to mean. */
final class StationAccount {

  private static final String INDENT = "            ";

  private StationAccount() {}

  static List<String> of(Station station) {
    List<String> lines = new ArrayList<>();
    lines.add("station   " + station.name());
    lines.add("broker    " + broker(station.broker()));
    lines.add("journal   " + station.journal());
    lines.add(
        "http      " + station.http().map(http -> http.host() + ":" + http.port()).orElse("none"));
    station.standards().values().forEach(standard -> lines.add("standard  " + standard(standard)));
    for (List<String> recipe : RecipeAccount.of(station.recipes())) {
      lines.add("recipe    " + recipe.get(0));
      recipe.stream().skip(1).forEach(line -> lines.add(INDENT + line));
    }
    for (Probe probe : station.probes().values()) {
      lines.add("probe     " + probe.name() + ": " + link(probe.link()));
      if (probe.link() instanceof LinkSettings.Recording recording) {
        RecordingWords.layout(recording).forEach(line -> lines.add(INDENT + line));
      }
      probe.electrode().ifPresent(electrode -> electrode(electrode, lines));
    }
    GuidanceAccount.of(station).forEach(lines::add);
    return lines;
  }

  private static String broker(Broker broker) {
    if (broker instanceof Broker.Remote remote) {
      return remote.url() + remote.user().map(user -> " as " + user).orElse("");
    }
    int port = ((Broker.Embedded) broker).port();
    return "embedded, " + (port == 0 ? "a free port" : "port " + port) + " on loopback";
  }

  private static String standard(StandardSolution standard) {
    return "%s: %s%s%s"
        .formatted(
            standard.name(),
            label(standard.value()),
            standard.lot().map(lot -> ", lot " + lot).orElse(""),
            standard.expires().map(day -> ", expires " + day).orElse(""));
  }

  private static String label(StandardSolution.Value value) {
    if (value instanceof StandardSolution.Value.OfConcentration given) {
      return "%s %s%s, standard uncertainty %s %%"
          .formatted(
              Words.number(given.concentration().value()),
              given.concentration().unit(),
              given.basis().map(basis -> " " + basis).orElse(""),
              Words.number(100 * given.relativeUncertainty()));
    }
    if (value instanceof StandardSolution.Value.OfBuffer given) {
      return "buffer %s, standard uncertainty %s pH"
          .formatted(given.buffer(), Words.number(given.phUncertainty()));
    }
    if (value instanceof StandardSolution.Value.OfPhTable given) {
      return "pH at %d temperatures, standard uncertainty %s pH"
          .formatted(given.phByCelsius().size(), Words.number(given.phUncertainty()));
    }
    StandardSolution.Value.OfPh given = (StandardSolution.Value.OfPh) value;
    return "pH %s, standard uncertainty %s pH"
        .formatted(Words.number(given.ph()), Words.number(given.phUncertainty()));
  }

  private static String link(LinkSettings link) {
    if (link instanceof LinkSettings.Serial serial) {
      return "serial port %s%s, %d baud, %s, lines like %s"
          .formatted(
              serial.port().name(),
              serial.channel().map(channel -> " channel " + channel).orElse(""),
              serial.port().baud(),
              serial.poll().isPresent()
                  ? "asked every " + Words.span(serial.pollEvery())
                  : "sends by itself",
              serial.line().pattern());
    }
    if (link instanceof LinkSettings.Modbus modbus) {
      return ModbusAccount.of(modbus);
    }
    if (link instanceof LinkSettings.Sdi12 sensor) {
      return "SDI-12 sensor %c on serial port %s, %d baud, asked %s%s every %s"
          .formatted(
              sensor.address(),
              sensor.port().name(),
              sensor.port().baud(),
              sensor.command().key(),
              sensor.checked() ? " with checksum" : "",
              Words.span(sensor.every()));
    }
    if (link instanceof LinkSettings.Mqtt mqtt) {
      return "messages on topic "
          + mqtt.topic()
          + mqtt.captured().map(name -> ", where + is " + name).orElse("");
    }
    if (link instanceof LinkSettings.Recording recording) {
      return RecordingWords.of(recording);
    }
    LinkSettings.Simulated simulated = (LinkSettings.Simulated) link;
    int faults = simulated.faults().size();
    return "simulated, a reading every %s, %s"
        .formatted(
            Words.span(simulated.interval()),
            faults == 0 ? "no faults" : faults == 1 ? "1 fault" : faults + " faults");
  }

  private static void electrode(Electrode electrode, List<String> lines) {
    lines.add(
        INDENT
            + "%s%s in %s, temperature %s"
                .formatted(
                    electrode.analyte(),
                    electrode.basis().map(basis -> " " + basis).orElse(""),
                    electrode.unit(),
                    temperature(electrode.temperature())));
    lines.add(INDENT + settle(electrode.settle()));
    CalibrateAccount.of(electrode.calibrate()).forEach(line -> lines.add(INDENT + line));
    ChemistryAccount.of(electrode).forEach(line -> lines.add(INDENT + line));
    ChecksAccount.of(electrode.checks()).forEach(line -> lines.add(INDENT + line));
    electrode.care().ifPresent(care -> lines.add(INDENT + care(care)));
    lines.add(INDENT + routine(electrode.routine()));
    if (electrode.moves() instanceof Moves.ByItself seen) {
      lines.add(INDENT + moves(seen));
    }
  }

  private static String care(Care care) {
    return "soaks %s after storage; dried after %s out of solution; a long rest is over %s days"
        .formatted(
            Words.span(care.soak()),
            Words.span(care.dryAfter()),
            Words.number(care.longRest().toHours() / 24.0));
  }

  private static String moves(Moves.ByItself seen) {
    List<String> signs = new ArrayList<>();
    seen.outOfSolutionMillivolts()
        .ifPresent(swing -> signs.add("swings of %s mV in the air".formatted(Words.number(swing))));
    seen.stepMillivolts()
        .ifPresent(step -> signs.add("a step of %s mV".formatted(Words.number(step))));
    return "a move to another cup is seen by %s; told when none is seen for %s"
        .formatted(String.join(" or by ", signs), Words.span(seen.notSeenAfter()));
  }

  private static String temperature(TemperatureSource source) {
    if (source instanceof TemperatureSource.Fixed fixed) {
      return "fixed at %s °C (standard uncertainty %s K)"
          .formatted(Words.number(fixed.celsius()), Words.number(fixed.uncertaintyKelvin()));
    }
    if (source instanceof TemperatureSource.FromProbe from) {
      return "from probe %s, %s when older than %s"
          .formatted(
              from.probe(),
              from.whenStale() == TemperatureSource.WhenStale.REFUSE ? "refused" : "flagged",
              Words.span(from.staleAfter()));
    }
    return "from the reading";
  }

  private static String settle(Settle settle) {
    return "at rest when %s, not before %s, given up after %s"
        .formatted(
            SettleWords.of(settle.rule()),
            Words.span(settle.notBefore()),
            Words.span(settle.giveUpAfter()));
  }

  private static String routine(Routine routine) {
    if (routine instanceof Routine.EachInterval each) {
      return "read by itself every " + Words.span(each.interval());
    }
    if (routine instanceof Routine.EachRest each) {
      return "read by itself each time it comes to rest; silence of %s is a gap"
          .formatted(Words.span(each.gapAfter()));
    }
    return "read on instruction";
  }
}
