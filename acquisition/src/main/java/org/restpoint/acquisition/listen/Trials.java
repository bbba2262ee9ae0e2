package org.restpoint.acquisition.listen;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.LongSupplier;
import org.restpoint.adapters.guess.Legibility;
import org.restpoint.adapters.guess.Sample;
import org.restpoint.adapters.link.LinkTrouble;
import org.restpoint.adapters.serial.PortSettings.Parity;
import org.restpoint.adapters.wire.Wire;
import org.restpoint.adapters.wire.WireSource;

/**
 * Tries the usual speeds and framings of a port, one after the other, and never sends anything.
 *
 * <p>All speeds are tried with 8N1 first. Where none of them is good, the other framings follow,
 * beginning with the speed that gave most text: a parity bit that is taken for a data bit leaves
 * half of the characters whole. Where nothing came at any speed it ends there, for a meter that
 * sends is heard at every speed, if only as noise.
 */
public final class Trials {

  private static final int[] SPEEDS = {9600, 19200, 38400, 57600, 115200, 4800, 2400, 1200};

  /** Hearing three lines of a meter that sends one a second. */
  private static final Duration EACH = Duration.ofSeconds(4);

  private final Function<Setting, WireSource> ports;
  private final BooleanSupplier givenUp;
  private final LongSupplier nanos;
  private final Consumer<Trial> told;

  /**
   * @param ports the port, set in some way
   * @param givenUp whether nobody wants to know any more
   * @param told is told of each trial
   */
  public Trials(
      Function<Setting, WireSource> ports,
      BooleanSupplier givenUp,
      LongSupplier nanos,
      Consumer<Trial> told) {
    this.ports = ports;
    this.givenUp = givenUp;
    this.nanos = nanos;
    this.told = told;
  }

  /**
   * One setting and what was heard with it.
   *
   * @param setting the setting
   * @param legibility how much it looked like text
   */
  public record Trial(Setting setting, Legibility legibility) {}

  /** What all trials came to. */
  public sealed interface Outcome {

    /**
     * Something was heard.
     *
     * @param best the trial that looked most like text
     */
    record Heard(Trial best) implements Outcome {}

    /** Nothing came at all. */
    record Silent() implements Outcome {}

    /**
     * The port does not open.
     *
     * @param trouble why, and what to do about it
     */
    record Closed(LinkTrouble trouble) implements Outcome {}
  }

  /** Tries until one setting is good or all were tried. */
  public Outcome run() {
    List<Trial> plain = new ArrayList<>();
    for (int baud : SPEEDS) {
      Optional<Outcome> end = attempt(new Setting(baud, 8, Parity.NONE), plain);
      if (end.isPresent()) {
        return end.get();
      }
    }
    if (plain.stream().allMatch(trial -> trial.legibility().bytes() == 0)) {
      return new Outcome.Silent();
    }
    List<Trial> all = new ArrayList<>(plain);
    for (Trial trial : plain.stream().sorted(byScore().reversed()).toList()) {
      int baud = trial.setting().baud();
      for (Setting setting :
          List.of(
              new Setting(baud, 7, Parity.EVEN),
              new Setting(baud, 8, Parity.EVEN),
              new Setting(baud, 7, Parity.ODD))) {
        Optional<Outcome> end = attempt(setting, all);
        if (end.isPresent()) {
          return end.get();
        }
      }
    }
    return new Outcome.Heard(all.stream().max(byScore()).orElseThrow());
  }

  private static Comparator<Trial> byScore() {
    return Comparator.comparingDouble(trial -> trial.legibility().score());
  }

  /** One trial; an outcome where no other is needed. */
  private Optional<Outcome> attempt(Setting setting, List<Trial> trials) {
    if (givenUp.getAsBoolean()) {
      return Optional.empty();
    }
    WireSource.Attempt attempt = ports.apply(setting).open(() -> {});
    if (attempt instanceof WireSource.Attempt.Refused refused) {
      return Optional.of(new Outcome.Closed(refused.trouble()));
    }
    try (Wire wire = ((WireSource.Attempt.Opened) attempt).wire()) {
      Sample sample =
          new PortEar(wire, Optional.empty(), givenUp, nanos)
              .hear(EACH, heard -> Legibility.of(heard.bytes()).isGood());
      Trial trial = new Trial(setting, Legibility.of(sample.bytes()));
      told.accept(trial);
      trials.add(trial);
      return trial.legibility().isGood() ? Optional.of(new Outcome.Heard(trial)) : Optional.empty();
    }
  }
}
