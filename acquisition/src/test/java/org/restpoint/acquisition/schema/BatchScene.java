package org.restpoint.acquisition.schema;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.restpoint.acquisition.event.Answer;
import org.restpoint.acquisition.event.Event;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.acquisition.instruction.InstructionReader;
import org.restpoint.acquisition.probe.KeptResults;
import org.restpoint.acquisition.probe.Output;
import org.restpoint.acquisition.station.StationRoutine;
import org.restpoint.config.station.Electrode;
import org.restpoint.config.station.Moves;
import org.restpoint.config.station.Probe;
import org.restpoint.config.station.Station;
import org.restpoint.stability.reading.Reading;

/** A batch with everything that can be said of one. */
final class BatchScene implements Output {

  private static final Moves SEEN =
      new Moves.ByItself(
          OptionalDouble.empty(),
          OptionalDouble.of(20),
          3,
          10,
          Duration.ofSeconds(3),
          Duration.ofMinutes(1));

  private final List<Object> said = new ArrayList<>();
  private final StationRoutine routine;
  private Instant now = Session.START;

  private BatchScene(Moves moves) {
    routine = new StationRoutine(station(moves), Map.of(), this, new KeptResults(), false);
    routine.begin(now);
  }

  /** By words, with every word out of order. */
  static List<JsonNode> byWords() {
    BatchScene scene = new BatchScene(new Moves.Told());
    return scene
        .tell("{'do':'done'}")
        .tell("{'do':'batch','cups':[{'cup':'1','standard':'mid'},{'cup':'2','check':'dim'}]}")
        .tell("{'do':'measure'}")
        .tell("{'do':'batch','cups':[{'cup':'1','sample':'S-1'}]}")
        .tell("{'do':'cancel'}")
        .tell(
            "{'id':'b','do':'batch','cups':[{'cup':'1','standard':'low'},{'cup':'2','sample':"
                + "{'number':'S-1','field':'north'}},{'cup':'3','rinse':true},{'cup':'4','check':'low'},"
                + "{'cup':'5','sample':'S-2'},{'cup':'6','sample':'S-3'}]}")
        .tell("{'do':'batch','cups':[{'cup':'1','rinse':true}]}")
        .tell("{'do':'in-place'}")
        .tell("{'id':'n1','do':'next'}")
        .tell("{'do':'next'}")
        .tell("{'do':'in-place','cup':'4'}")
        .tell("{'id':'p1','do':'in-place','cup':'1'}")
        .tell("{'do':'done'}")
        .stand(9000, 8)
        .tell("{'do':'next'}")
        .tell("{'id':'p2','do':'in-place'}")
        .stand(Nitrate.millivolts(5), 8)
        .tell("{'do':'next'}")
        .tell("{'id':'p3','do':'in-place'}")
        .stand(Nitrate.millivolts(6), 8)
        .tell("{'do':'next'}")
        .tell("{'id':'p4','do':'in-place'}")
        .tell("{'do':'next'}")
        .tell("{'do':'next','skip':true}")
        .tell("{'do':'in-place'}")
        .pass(Duration.ofMinutes(11))
        .tell("{'do':'next'}")
        .tell("{'id':'e','do':'done'}")
        .tell("{'do':'batch','cups':[{'cup':'1','rinse':true}]}")
        .tell("{'do':'next'}")
        .tell("{'do':'in-place'}")
        .tell("{'do':'next'}")
        .tell("{'do':'in-place'}")
        .tell("{'do':'done'}")
        .written();
  }

  /** By moves that are seen, one not, and an electrode that is pulled early. */
  static List<JsonNode> bySeenMoves() {
    return new BatchScene(SEEN)
        .tell(
            "{'do':'batch','cups':[{'cup':'1','standard':'low'},{'cup':'2','sample':'S-1'},"
                + "{'cup':'3','sample':'S-2'}]}")
        .tell("{'do':'in-place'}")
        .stand(Nitrate.millivolts(5), 10)
        .air()
        .stand(Nitrate.millivolts(6), 5)
        .air()
        .stand(Nitrate.millivolts(6), 5)
        .tell("{'do':'in-place'}")
        .stand(Nitrate.millivolts(6), 10)
        .pass(Duration.ofMinutes(2))
        .tell("{'do':'done'}")
        .written();
  }

  private BatchScene tell(String json) {
    routine.instruct(
        now, Nitrate.PROBE, InstructionReader.read(json.replace('\'', '"')).instruction());
    return this;
  }

  private BatchScene stand(double millivolts, int seconds) {
    for (int i = 0; i < seconds; i++) {
      read(millivolts);
    }
    return this;
  }

  private BatchScene air() {
    for (double millivolts : new double[] {40, 310, -120, 280, 15}) {
      read(millivolts);
    }
    return this;
  }

  private void read(double millivolts) {
    now = now.plusSeconds(1);
    routine.reading(
        "temp-1", new Reading(now, OptionalDouble.empty(), OptionalDouble.of(Nitrate.CELSIUS)));
    routine.reading(Nitrate.PROBE, Reading.ofMillivolts(now, millivolts));
  }

  private BatchScene pass(Duration span) {
    now = now.plus(span);
    routine.elapse(now);
    return this;
  }

  private List<JsonNode> written() {
    return said.stream().map(EventJson::write).map(Schemas::parse).toList();
  }

  @Override
  public void event(Event event) {
    said.add(event);
  }

  @Override
  public void answer(Answer answer) {
    said.add(answer);
  }

  @Override
  public void confide(Answer answer) {
    answer(answer);
  }

  private static Station station(Moves moves) {
    Station plain = StationScene.station();
    Map<String, Probe> probes = new HashMap<>(plain.probes());
    probes.computeIfPresent(
        Nitrate.PROBE,
        (name, probe) ->
            new Probe(
                name,
                probe.link(),
                probe.electrode().map(electrode -> moving(electrode, moves)),
                false));
    return new Station(
        plain.name(),
        plain.broker(),
        plain.journal(),
        Optional.empty(),
        plain.logs(),
        plain.standards(),
        plain.recipes(),
        probes,
        plain.guidance());
  }

  private static Electrode moving(Electrode e, Moves moves) {
    return new Electrode(
        e.analyte(),
        e.basis(),
        e.unit(),
        e.temperature(),
        e.compensation(),
        e.activity(),
        e.interferents(),
        e.settle(),
        e.calibrate(),
        e.checks(),
        e.routine(),
        e.care(),
        moves);
  }
}
