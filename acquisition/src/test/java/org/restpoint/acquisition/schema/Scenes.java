package org.restpoint.acquisition.schema;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.restpoint.acquisition.probe.Temperature;
import org.restpoint.config.station.Routine;
import org.restpoint.stability.rest.AnyOf;
import org.restpoint.stability.rest.ConsecutiveRule;
import org.restpoint.stability.rest.ForecastRule;
import org.restpoint.stability.rest.RestRule;

/** Sessions that between them say everything a routine can say. */
final class Scenes {

  private static final Routine BENCH = new Routine.Instructed();

  private Scenes() {}

  /** All that is said in all scenes. */
  static List<JsonNode> all() {
    List<JsonNode> all = new ArrayList<>();
    all.addAll(bench());
    all.addAll(recipes());
    all.addAll(badSolutions());
    all.addAll(refusedCalibrations());
    all.addAll(checks());
    all.addAll(standardsThatReadOff());
    all.addAll(intervals());
    all.addAll(rests());
    all.addAll(forecasts());
    all.addAll(aDay());
    all.addAll(StationScene.said());
    all.addAll(BatchScene.byWords());
    all.addAll(BatchScene.bySeenMoves());
    return all;
  }

  /** Out of storage and back into it, with a tip that dries out and steps that are skipped. */
  static List<JsonNode> aDay() {
    return Session.lookedAfter()
        .tell("{\"do\":\"store\",\"days\":3}")
        .pass(Duration.ofDays(15))
        .calibrate("low", 5)
        .tell("{\"do\":\"soak\"}")
        .pass(Duration.ofMinutes(21))
        .calibrate("low", 5)
        .calibrate("high", 50)
        .measure(20)
        .measure(20)
        .tell("{\"do\":\"rinsed\"}")
        .pass(Duration.ofMinutes(6))
        .measure(20)
        .tell("{\"do\":\"rinsed\",\"into\":\"low\"}")
        .tell("{\"do\":\"store\",\"days\":30}")
        .said();
  }

  /** A morning at the bench, with the mistakes a person makes. */
  static List<JsonNode> bench() {
    return Session.of(BENCH)
        .tell("{\"id\":\"1\",\"do\":\"measure\",\"sample\":\"S-1\"}")
        .tell("{\"do\":\"verify\",\"standard\":\"low\"}")
        .tell("{\"do\":\"cancel\"}")
        .tell("{\"do\":\"rinsed\"}")
        .tell("{\"id\":\"2\",\"do\":\"soak\",\"minutes\":5}")
        .pass(Duration.ofMinutes(6))
        .tell("{\"do\":\"calibrate\",\"standard\":\"lwo\"}")
        .tell("{\"do\":\"calibrate\",\"standard\":\"old\"}")
        .calibrate("high", 50)
        .measure(20)
        .calibrate("low", 5)
        .calibrate("high", 50)
        .tell(
            "{\"id\":\"3\",\"do\":\"measure\",\"sample\":{\"number\":\"S-3\",\"kind\":\"well water\",\"depthBottomCentimetres\":30}}")
        .tell("{\"do\":\"measure\"}")
        .read(5, Nitrate.millivolts(20))
        .measure(2)
        .measure(200)
        .calibrate("low", 5)
        .tell("{\"id\":\"4\",\"do\":\"verify\",\"standard\":\"high\"}")
        .read(5, Nitrate.millivolts(51))
        .pass(Duration.ofHours(13))
        .measure(20)
        .said();
  }

  /** Samples prepared by recipes, rightly and wrongly. */
  static List<JsonNode> recipes() {
    return Session.of(BENCH)
        .calibrate("low", 5)
        .calibrate("high", 50)
        .tell("{\"do\":\"measure\",\"sample\":\"T-1\",\"recipe\":\"tile\"}")
        .read(5, Nitrate.millivolts(20))
        .tell("{\"do\":\"measure\",\"recipe\":\"bare\"}")
        .read(5, Nitrate.millivolts(20))
        .tell("{\"do\":\"measure\",\"sample\":{\"number\":\"T-2\",\"recipe\":\"soil\"}}")
        .read(5, Nitrate.millivolts(20))
        .tell(
            "{\"do\":\"measure\",\"sample\":{\"number\":\"T-2\",\"recipe\":\"soil\",\"moisturePercent\":4}}")
        .read(5, Nitrate.millivolts(20))
        .tell("{\"do\":\"measure\",\"recipe\":\"tlie\"}")
        .said();
  }

  /** Nothing to be had from the solution, the link or the thermometer. */
  static List<JsonNode> badSolutions() {
    Temperature unknown = new Temperature.Missing("no thermometer", "Connect it.");
    Temperature stale = new Temperature.Known(24, 0.2, true);
    return Session.of(BENCH)
        .calibrate("low", 5)
        .calibrate("high", 50)
        .tell("{\"do\":\"measure\"}")
        .read(5, Nitrate.millivolts(20), stale)
        .tell("{\"do\":\"measure\"}")
        .read(5, Nitrate.millivolts(20), unknown)
        .tell("{\"do\":\"measure\"}")
        .read(5, 5000)
        .tell("{\"do\":\"measure\"}")
        .creep(30)
        .pass(Duration.ofMinutes(11))
        .tell("{\"do\":\"measure\",\"sample\":\"S-2\"}")
        .pass(Duration.ofMinutes(11))
        .tell("{\"id\":\"9\",\"do\":\"measure\"}")
        .creep(3)
        .tell("{\"do\":\"cancel\"}")
        .tell("{\"do\":\"calibrate\",\"standard\":\"low\"}")
        .read(5, Nitrate.millivolts(5), unknown)
        .tell("{\"do\":\"calibrate\",\"standard\":\"low\"}")
        .pass(Duration.ofMinutes(11))
        .said();
  }

  /** Standards that draw no line, or none that may be used. */
  static List<JsonNode> refusedCalibrations() {
    return Session.of(BENCH)
        .calibrateAt("low", 200)
        .calibrateAt("high", 190)
        .tell("{\"do\":\"measure\"}")
        .calibrateAt("high", 130)
        .calibrateAt("high", 210)
        .calibrateAt("high", 200)
        .calibrateAt("high", Nitrate.millivolts(50))
        .tell("{\"do\":\"soak\"}")
        .tell("{\"do\":\"cancel\"}")
        .calibrateAt("low", 200)
        .calibrateAt("spare", 200)
        .calibrateAt("high", 145)
        .said();
  }

  /** Checks of every kind that pass, fail and cannot tell. */
  static List<JsonNode> checks() {
    String sample = "{\"do\":\"measure\",\"sample\":\"S-1\"}";
    String standard = "{\"do\":\"verify\",\"standard\":\"low\"}";
    String blank = "{\"do\":\"verify\",\"role\":\"blank\"}";
    String duplicate = "{\"do\":\"verify\",\"role\":\"duplicate\",\"sample\":\"S-1\"}";
    String spike = "{\"do\":\"verify\",\"role\":\"spike\",\"sample\":\"S-1\"}";
    Session session =
        Session.checked()
            .calibrate("low", 5)
            .calibrate("high", 50)
            .tell(duplicate)
            .read(sample, 20)
            .read(sample, 20)
            .read(sample, 20)
            .read(blank, 0.2)
            .read(standard, 3)
            .read(sample, 20)
            .read(standard, 4.6)
            .read(standard, 5)
            .read(blank, 0.5)
            .read(blank, 2)
            .read(duplicate, 20)
            .read(duplicate, 24.44)
            .read(duplicate, 30)
            .read(spike, 29.7)
            .read(spike, 27.2)
            .read(spike, 24)
            .read(spike, 40)
            .read(sample, 80)
            .read(spike, 89);
    for (int i = 0; i < 40; i++) {
      session.read(standard, i < 25 ? 5 + 0.01 * (i % 3) : 5.1);
    }
    return session.said();
  }

  /**
   * A standard that somebody spilt into, an operator who knows better, and an electrode that moved.
   */
  static List<JsonNode> standardsThatReadOff() {
    return Session.of(BENCH)
        .tell("{\"do\":\"accept-standard\"}")
        .calibrate("low", 5)
        .calibrate("high", 50)
        .measure(20)
        .calibrate("low", 8)
        .tell("{\"do\":\"accept-standard\",\"because\":\"a new bottle\"}")
        .measure(20)
        .calibrate("low", 5)
        .calibrateAt("low", Nitrate.millivolts(5) + 10)
        .calibrateAt("high", Nitrate.millivolts(50) + 10)
        .tell("{\"do\":\"calibrate\",\"standard\":\"low\"}")
        .creep(30)
        .pass(Duration.ofMinutes(11))
        .tell("{\"do\":\"accept-standard\"}")
        .said();
  }

  /** A stream read each interval, with the electrode taken out and the service away. */
  static List<JsonNode> intervals() {
    Routine hourly = new Routine.EachInterval(Duration.ofHours(1));
    return Session.of(hourly)
        .read(6, Nitrate.millivolts(20))
        .calibrate("low", 5)
        .pass(Duration.ofHours(1))
        .calibrate("high", 50)
        .tell("{\"do\":\"rinsed\"}")
        .pass(Duration.ofHours(1))
        .read(6, Nitrate.millivolts(20))
        .pass(Duration.ofHours(2))
        .calibrateAt("low", 500)
        .tell("{\"do\":\"rinsed\"}")
        .pass(Duration.ofHours(1))
        .read(6, Nitrate.millivolts(20))
        .tell("{\"do\":\"calibrate\",\"standard\":\"low\"}")
        .restartedAfter(hourly, Duration.ofHours(5))
        .said();
  }

  /** Rests that are foretold, one too late, and in a combination. */
  static List<JsonNode> forecasts() {
    RestRule forecast = new ForecastRule(1);
    RestRule any = new AnyOf(List.of(new ConsecutiveRule(50, 0.1), forecast));
    List<JsonNode> said = new ArrayList<>();
    said.addAll(
        Session.of(forecast)
            .tell("{\"do\":\"calibrate\",\"standard\":\"low\"}")
            .read(30, Nitrate.millivolts(5))
            .tell("{\"do\":\"calibrate\",\"standard\":\"high\"}")
            .read(30, Nitrate.millivolts(50))
            .tell("{\"do\":\"measure\"}")
            .read(30, Nitrate.millivolts(20))
            .tell("{\"do\":\"calibrate\",\"standard\":\"low\"}")
            .read(30, Nitrate.millivolts(5))
            .tell("{\"do\":\"measure\"}")
            .creep(12)
            .pass(Duration.ofMinutes(11))
            .tell("{\"id\":\"new\",\"do\":\"replaced\",\"part\":\"membrane\"}")
            .tell("{\"do\":\"measure\"}")
            .said());
    said.addAll(
        Session.of(any)
            .tell("{\"do\":\"calibrate\",\"standard\":\"low\"}")
            .read(30, Nitrate.millivolts(5))
            .said());
    return said;
  }

  /** A stream read each time it comes to rest, and its silence. */
  static List<JsonNode> rests() {
    return Session.of(new Routine.EachRest(Duration.ofMinutes(5)))
        .calibrate("low", 5)
        .calibrate("high", 50)
        .tell("{\"do\":\"rinsed\"}")
        .read(10, Nitrate.millivolts(20))
        .read(10, Nitrate.millivolts(25))
        .pass(Duration.ofMinutes(20))
        .said();
  }
}
