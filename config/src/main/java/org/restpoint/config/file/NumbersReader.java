package org.restpoint.config.file;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.restpoint.config.station.Numbers;
import org.restpoint.config.station.PotentialNumber;
import org.restpoint.config.station.TemperatureNumber;

/** Reads what the numbers are that a device sends. */
final class NumbersReader {

  private static final String COUNTS = "counts";

  /** What a number of a potential may be called. */
  static final List<String> POTENTIALS = List.of("millivolts", "volts", "microvolts", COUNTS);

  /** What a number of a temperature may be called. */
  static final List<String> TEMPERATURES = List.of("celsius", "kelvin", "fahrenheit", "ohms");

  /** All of them. */
  static final List<String> NAMES =
      Stream.concat(POTENTIALS.stream(), TEMPERATURES.stream()).toList();

  /** The keys that say more about counts and ohms. */
  static final List<String> KEYS = List.of("scale", "offset", "thermometer");

  private static final Allowed SCALE = Allowed.from(Measure.POTENTIAL, "-1000 mV", "1000 mV");
  private static final Allowed OFFSET = Allowed.from(Measure.POTENTIAL, "-10000 mV", "10000 mV");

  private final Section keys;
  private final boolean thermometer;
  private final List<String> ownPotentials;

  /**
   * A reader for one link.
   *
   * @param keys the link's, with {@link #KEYS} among them
   * @param thermometer whether the probe is a thermometer rather than an electrode
   */
  NumbersReader(Section keys, boolean thermometer) {
    this(keys, thermometer, POTENTIALS);
  }

  private NumbersReader(Section keys, boolean thermometer, List<String> potentials) {
    this.keys = keys;
    this.thermometer = thermometer;
    this.ownPotentials = potentials;
  }

  /** A reader for a link whose numbers have scales of their own: of counts it knows nothing. */
  static NumbersReader ofScaled(Section keys, boolean thermometer) {
    return new NumbersReader(
        keys, thermometer, POTENTIALS.stream().filter(name -> !name.equals(COUNTS)).toList());
  }

  /** What the device must send at least, for messages: the first choice of it. */
  static String needed(boolean thermometer) {
    return thermometer ? TEMPERATURES.get(0) : POTENTIALS.get(0);
  }

  /**
   * Reads them; empty where something is missing, told.
   *
   * @param names the names that are there, among {@link #NAMES} in that order
   * @param where what a wrong set of names is a problem of
   * @param what what bears the names, such as {@code group}, for messages
   */
  Optional<Numbers> read(List<String> names, Entry where, String what) {
    List<String> potentials = names.stream().filter(POTENTIALS::contains).toList();
    List<String> temperatures = names.stream().filter(TEMPERATURES::contains).toList();
    boolean oneEach = oneEach(potentials, temperatures, where, what);
    Optional<PotentialNumber> potential = potentials.stream().findFirst().flatMap(this::potential);
    Optional<TemperatureNumber> temperature =
        temperatures.stream().findFirst().flatMap(this::temperature);
    tellStray(potentials, temperatures);
    boolean whole =
        oneEach
            && potential.isPresent() == (potentials.size() == 1)
            && temperature.isPresent() == (temperatures.size() == 1);
    return whole ? Optional.of(new Numbers(potential, temperature)) : Optional.empty();
  }

  private boolean oneEach(
      List<String> potentials, List<String> temperatures, Entry where, String what) {
    String articled = thermometer ? "a thermometer" : "an electrode";
    List<String> own = thermometer ? temperatures : potentials;
    List<String> choice = thermometer ? TEMPERATURES : ownPotentials;
    if (own.size() != 1) {
      where.refuse(
          "one %s of %s for %s".formatted(what, Wording.row(choice, "or"), articled),
          own.isEmpty() ? "none of them" : Wording.row(own, "and"));
      return false;
    }
    if (thermometer && !potentials.isEmpty()) {
      where.refuse(own.get(0) + " alone for a thermometer", Wording.row(potentials, "and"));
      return false;
    }
    if (temperatures.size() > 1) {
      where.refuse(
          "at most one %s of %s".formatted(what, Wording.row(TEMPERATURES, "or")),
          Wording.row(temperatures, "and"));
      return false;
    }
    return true;
  }

  private Optional<PotentialNumber> potential(String name) {
    return switch (name) {
      case "millivolts" -> Optional.of(new PotentialNumber.Millivolts());
      case "volts" -> Optional.of(new PotentialNumber.Volts());
      case "microvolts" -> Optional.of(new PotentialNumber.Microvolts());
      default -> counts();
    };
  }

  private Optional<PotentialNumber> counts() {
    Optional<Double> scale =
        keys.need("scale", "the potential of one count, e.g. 0.0625 mV").flatMap(this::scale);
    double offset = keys.find("offset").flatMap(OFFSET::number).orElse(0.0);
    return scale.map(perCount -> new PotentialNumber.Counts(perCount, offset));
  }

  private Optional<Double> scale(Entry entry) {
    Optional<Double> scale = SCALE.number(entry);
    if (scale.filter(value -> value == 0).isPresent()) {
      entry.refuse("the potential of one count, not zero");
      return Optional.empty();
    }
    return scale;
  }

  private Optional<TemperatureNumber> temperature(String name) {
    return switch (name) {
      case "celsius" -> Optional.of(new TemperatureNumber.Celsius());
      case "kelvin" -> Optional.of(new TemperatureNumber.Kelvin());
      case "fahrenheit" -> Optional.of(new TemperatureNumber.Fahrenheit());
      default ->
          keys.need("thermometer", "which thermometer has these ohms, e.g. pt100")
              .flatMap(ThermometerReader::read)
              .map(TemperatureNumber.Ohms::new);
    };
  }

  private void tellStray(List<String> potentials, List<String> temperatures) {
    if (ownPotentials.contains(COUNTS) && !potentials.contains(COUNTS)) {
      for (String key : List.of("scale", "offset")) {
        keys.find(key)
            .ifPresent(entry -> entry.refuse(key + " only with counts", foundNumbers(potentials)));
      }
    }
    if (!temperatures.contains("ohms")) {
      keys.find("thermometer")
          .ifPresent(
              entry -> entry.refuse("thermometer only with ohms", foundNumbers(temperatures)));
    }
  }

  private static String foundNumbers(List<String> names) {
    return names.isEmpty() ? "none" : Wording.row(names, "and");
  }
}
