package org.restpoint.adapters.guess;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.IntFunction;

/**
 * Which numbers of a line are the potential and the temperature, and what says whose the line is.
 *
 * <p>Each number gets points as potential and as temperature; the pair with the most points wins,
 * the earlier one of equals. A unit that is said weighs more than a name, a name more than the
 * values: a temperature without either lies from 0 to 40 and moves by less than 3; a potential from
 * -2000 to 2000 mV, more likely with a sign and with decimals.
 *
 * @param potential the potential, if there is one
 * @param temperature the temperature, if there is one
 * @param channel the place of the channel, if there is one
 * @param doubts what a person should look at, whole sentences without a full stop
 */
record Roles(
    Optional<Role> potential,
    Optional<Role> temperature,
    Optional<Integer> channel,
    List<String> doubts) {

  private static final int CLOSE = 1;

  /**
   * A number with a meaning.
   *
   * @param place its column
   * @param group its name in a pattern
   * @param points how much speaks for it
   */
  record Role(int place, String group, int points) {

    boolean isAt(Optional<Role> other) {
      return other.map(role -> role.place() == place).orElse(false);
    }
  }

  /**
   * The roles in lines of one layout.
   *
   * @param channel the place that says whose a line is, if there is one
   * @param names what a person knows the number at a place by
   */
  static Roles of(Layout layout, Optional<Integer> channel, IntFunction<String> names) {
    Labels labels = new Labels(layout);
    List<Role> potentials = new ArrayList<>();
    List<Role> temperatures = new ArrayList<>();
    for (int place : layout.numbers()) {
      if (!channel.equals(Optional.of(place)) && !labels.isPartOfName(place)) {
        Evidence evidence = new Evidence(layout.columns().get(place), labels, place);
        evidence.asPotential().ifPresent(potentials::add);
        evidence.asTemperature().ifPresent(temperatures::add);
      }
    }
    return paired(names, channel, potentials, temperatures);
  }

  private static Roles paired(
      IntFunction<String> names,
      Optional<Integer> channel,
      List<Role> potentials,
      List<Role> temperatures) {
    Optional<Pair> best = Optional.empty();
    for (Role potential : potentials) {
      best = Pair.better(best, new Pair(potential, Optional.empty()));
      for (Role temperature : temperatures) {
        if (potential.place() != temperature.place()) {
          best = Pair.better(best, new Pair(potential, Optional.of(temperature)));
        }
      }
    }
    Optional<Role> thermometer =
        temperatures.stream()
            .filter(role -> role.points() >= Evidence.NAMED)
            .max(Comparator.comparingInt(Role::points));
    if (best.isEmpty() || (thermometer.isPresent() && best.get().potential().isAt(thermometer))) {
      return new Roles(Optional.empty(), thermometer, channel, List.of());
    }
    Role potential = best.get().potential();
    Optional<Role> temperature = best.get().temperature();
    return new Roles(
        Optional.of(potential),
        temperature,
        channel,
        doubts(names, potential, temperature, potentials));
  }

  /** A potential, and a temperature where there is one. */
  private record Pair(Role potential, Optional<Role> temperature) {

    int points() {
      return potential.points() + temperature.map(Role::points).orElse(0);
    }

    /** The one with more points, the earlier one of equals. */
    static Optional<Pair> better(Optional<Pair> best, Pair next) {
      return best.filter(pair -> pair.points() >= next.points()).or(() -> Optional.of(next));
    }
  }

  private static List<String> doubts(
      IntFunction<String> names,
      Role potential,
      Optional<Role> temperature,
      List<Role> potentials) {
    List<String> doubts = new ArrayList<>();
    boolean temperatureIsSaid =
        temperature.filter(role -> role.points() >= Evidence.NAMED).isPresent();
    List<String> rivals =
        potentials.stream()
            .filter(other -> other.place() != potential.place())
            .filter(other -> other.points() + CLOSE >= potential.points())
            .filter(other -> !(temperatureIsSaid && other.isAt(temperature)))
            .map(other -> names.apply(other.place()))
            .toList();
    if (!rivals.isEmpty()) {
      doubts.add(
          "%s is taken for the potential; it could as well be %s"
              .formatted(names.apply(potential.place()), String.join(" or ", rivals)));
    } else if (potential.points() < Evidence.NAMED) {
      doubts.add(
          names.apply(potential.place()) + " is taken for the potential by its values alone");
    }
    temperature
        .filter(role -> !temperatureIsSaid)
        .ifPresent(
            role ->
                doubts.add(
                    names.apply(role.place())
                        + " is taken for the temperature by its values alone"));
    return List.copyOf(doubts);
  }
}
