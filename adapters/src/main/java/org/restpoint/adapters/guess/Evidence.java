package org.restpoint.adapters.guess;

import java.util.Optional;
import org.restpoint.adapters.guess.Roles.Role;

/** What speaks for a number of a line being a potential or a temperature. */
record Evidence(Column column, Labels labels, int place) {

  /** Points for a unit that is said. */
  private static final int UNIT = 10;

  /** Points for a name that says it. */
  static final int NAMED = 6;

  /** The input of an electrode meter spans ±2 V at most. */
  private static final double MOST_MILLIVOLTS = 2_000;

  /** A solution in a laboratory or a stream. */
  private static final double MOST_CELSIUS = 40;

  private static final double ICE_KELVIN = 273.15;

  /** A solution's temperature moves slowly. */
  private static final double SLOW = 3;

  /** As a potential, where it can be one. */
  Optional<Role> asPotential() {
    Optional<Quantity> unit = labels.unit(place);
    if (unit.isPresent()) {
      return said(unit.get(), UNIT).filter(role -> unit.get().isPotential());
    }
    Optional<Quantity> name = labels.name(place);
    if (name.isPresent()) {
      return said(name.get(), NAMED)
          .filter(role -> name.get().isPotential())
          .map(role -> looksLikeVolts(name.get()) ? new Role(place, "volts", NAMED) : role);
    }
    if (column.isCounter() || (column.isConstant() && !column.hasDecimals())) {
      return Optional.empty();
    }
    if (!column.isWithin(-MOST_MILLIVOLTS, MOST_MILLIVOLTS)) {
      return column.hasDecimals() ? Optional.empty() : Optional.of(new Role(place, "counts", 1));
    }
    int points = 2;
    points += column.isConstant() ? 0 : 1;
    points += column.least() < 0 ? 1 : 0;
    points += column.hasDecimals() ? 1 : 0;
    return Optional.of(new Role(place, "millivolts", points));
  }

  /** As a temperature, where it can be one. */
  Optional<Role> asTemperature() {
    Optional<Quantity> unit = labels.unit(place);
    if (unit.isPresent()) {
      return said(unit.get(), UNIT).filter(role -> unit.get().isTemperature());
    }
    Optional<Quantity> name = labels.name(place);
    if (name.isPresent()) {
      return said(name.get(), NAMED)
          .filter(role -> name.get().isTemperature())
          .map(role -> looksLikeKelvin(name.get()) ? new Role(place, "kelvin", NAMED) : role);
    }
    boolean slow = column.hasDecimals() && column.most() - column.least() < SLOW;
    if (slow && column.isWithin(0, MOST_CELSIUS)) {
      return Optional.of(new Role(place, "celsius", 3));
    }
    return slow && isKelvin() ? Optional.of(new Role(place, "kelvin", 2)) : Optional.empty();
  }

  private Optional<Role> said(Quantity quantity, int points) {
    return quantity.group().map(group -> new Role(place, group, points));
  }

  /** A potential without a unit that never reaches 2 is hardly one in mV. */
  private boolean looksLikeVolts(Quantity name) {
    return name == Quantity.POTENTIAL && column.hasDecimals() && column.isWithin(-2, 2);
  }

  private boolean looksLikeKelvin(Quantity name) {
    return name == Quantity.TEMPERATURE && isKelvin();
  }

  private boolean isKelvin() {
    return column.isWithin(ICE_KELVIN, ICE_KELVIN + MOST_CELSIUS);
  }
}
