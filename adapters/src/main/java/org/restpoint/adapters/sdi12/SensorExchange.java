package org.restpoint.adapters.sdi12;

import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.restpoint.adapters.bus.Exchange;
import org.restpoint.adapters.bus.Outcome;
import org.restpoint.adapters.bus.Turn;
import org.restpoint.adapters.quantity.Parsed;
import org.restpoint.adapters.quantity.PotentialScale;
import org.restpoint.adapters.quantity.TemperatureScale;
import org.restpoint.adapters.sdi12.Dialogue.Reply;
import org.restpoint.adapters.sdi12.Sensor.Progress;

/** Reads one probe: has its sensor measure, and takes the probe's values of what comes. */
final class SensorExchange implements Exchange {

  private final Sensor sensor;
  private final Sdi12Settings settings;
  private long had;

  SensorExchange(Sensor sensor, Sdi12Settings settings) {
    this.sensor = sensor;
    this.settings = settings;
  }

  @Override
  public Outcome poll(Turn turn) {
    Dialogue dialogue = new Dialogue(turn, settings.answerWithin(), settings.retries());
    Progress progress = sensor.measure(dialogue, settings.measurement(), had);
    if (progress instanceof Progress.Wait wait) {
      return new Outcome.Later(wait.span(), this);
    }
    Sensor.Taken taken = ((Progress.Done) progress).taken();
    had = taken.number();
    return taken.values() instanceof Reply.Answered<List<Double>> answered
        ? outcome(answered.value())
        : ((Reply.Failed<List<Double>>) taken.values()).outcome();
  }

  private Outcome outcome(List<Double> values) {
    if (settings.potentialPlace().orElse(0) > values.size()) {
      return missing(
          values,
          settings.meaning().potential().map(PotentialScale::name).orElse(""),
          settings.potentialPlace());
    }
    if (settings.temperaturePlace().orElse(0) > values.size()) {
      return missing(
          values,
          settings.meaning().temperature().map(TemperatureScale::name).orElse(""),
          settings.temperaturePlace());
    }
    Parsed parsed =
        settings
            .meaning()
            .parsed(at(values, settings.potentialPlace()), at(values, settings.temperaturePlace()));
    return parsed instanceof Parsed.Values read
        ? new Outcome.Values(read)
        : Refusals.unbelieved(((Parsed.Rejected) parsed).reason());
  }

  private Outcome missing(List<Double> values, String name, OptionalInt place) {
    return Refusals.missing(settings.measurement(), values.size(), name, place.orElse(0));
  }

  private static OptionalDouble at(List<Double> values, OptionalInt place) {
    return place.isPresent()
        ? OptionalDouble.of(values.get(place.getAsInt() - 1))
        : OptionalDouble.empty();
  }
}
