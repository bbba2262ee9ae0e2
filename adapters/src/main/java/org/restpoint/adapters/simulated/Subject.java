package org.restpoint.adapters.simulated;

import java.util.List;

/** What a simulated link reads. */
public sealed interface Subject {

  /** As a person would call it. */
  String name();

  /** Where it stands, one after the other; none for what stands nowhere. */
  List<Visit> visits();

  /**
   * An electrode, with a thermometer beside it. Refuses, with an {@link IllegalArgumentException},
   * no visit at all and one for good before the last.
   *
   * @param traits what it is like
   * @param visits where it stands, one after the other and again from the first, unless the last
   *     one is for good; at rest in the first at the start
   * @param swing how the temperature of all solutions swings
   */
  record Electrode(ElectrodeTraits traits, List<Visit> visits, Swing swing) implements Subject {

    public Electrode {
      visits = List.copyOf(visits);
      if (visits.isEmpty()) {
        throw new IllegalArgumentException("an electrode stands in one solution at least");
      }
      if (visits.subList(0, visits.size() - 1).stream().anyMatch(v -> v.span().isEmpty())) {
        throw new IllegalArgumentException("only the last visit is for good");
      }
    }

    @Override
    public String name() {
      return "the simulated electrode";
    }
  }

  /**
   * A thermometer alone. Refuses, with an {@link IllegalArgumentException}, a temperature outside
   * −50 to 150 °C.
   *
   * @param celsius the temperature, in °C; where it swings, its mean
   * @param swing how it swings
   * @param display how finely it shows
   */
  record Thermometer(double celsius, Swing swing, Display display) implements Subject {

    public Thermometer {
      Beaker.checkCelsius(celsius);
    }

    @Override
    public String name() {
      return "the simulated thermometer";
    }

    @Override
    public List<Visit> visits() {
      return List.of();
    }
  }
}
