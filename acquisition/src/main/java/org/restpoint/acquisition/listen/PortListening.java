package org.restpoint.acquisition.listen;

import java.time.Duration;
import java.util.Locale;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.LongSupplier;
import org.restpoint.acquisition.listen.Trials.Trial;
import org.restpoint.adapters.guess.FramingGuess;
import org.restpoint.adapters.guess.Legibility;
import org.restpoint.adapters.guess.LineGuess;
import org.restpoint.adapters.guess.LineProposal;
import org.restpoint.adapters.guess.Sample;
import org.restpoint.adapters.text.Excerpt;
import org.restpoint.adapters.wire.Wire;
import org.restpoint.adapters.wire.WireSource;

/** Listens to a serial port, shows what comes, and proposes how to read it. */
public final class PortListening {

  /** Of less, a person is told that the speed may be wrong. */
  private static final double TEXT = 0.9;

  private final String port;
  private final Optional<Ask> ask;
  private final Function<Setting, WireSource> ports;
  private final Consumer<String> terminal;
  private final BooleanSupplier givenUp;
  private final LongSupplier nanos;

  /**
   * @param port its name, as it will stand in the station file
   * @param ask what to ask, if anything
   * @param ports the port, set in some way
   * @param terminal where lines for the person go
   * @param givenUp whether the person has seen enough
   * @param nanos a clock that only runs forward, in nanoseconds
   */
  public PortListening(
      String port,
      Optional<Ask> ask,
      Function<Setting, WireSource> ports,
      Consumer<String> terminal,
      BooleanSupplier givenUp,
      LongSupplier nanos) {
    this.port = port;
    this.ask = ask;
    this.ports = ports;
    this.terminal = terminal;
    this.givenUp = givenUp;
    this.nanos = nanos;
  }

  /** Tries the usual speeds and framings, and listens with the best. Sends nothing meanwhile. */
  public Outcome tryAndListen(Duration limit) {
    terminal.accept("trying the usual speeds and framings of %s; nothing is sent".formatted(port));
    Trials.Outcome tried = new Trials(ports, givenUp, nanos, this::tell).run();
    if (tried instanceof Trials.Outcome.Closed closed) {
      return new Outcome.NotOpened(closed.trouble().sentences());
    }
    if (tried instanceof Trials.Outcome.Heard heard) {
      if (!heard.best().legibility().isGood()) {
        terminal.accept(
            "none of them gives clear text; %s is the best"
                .formatted(heard.best().setting().text()));
      }
      return listen(heard.best().setting(), limit);
    }
    tellSilence("at any speed");
    return new Outcome.NotUnderstood();
  }

  private void tell(Trial trial) {
    Legibility heard = trial.legibility();
    terminal.accept(
        String.format(
            Locale.ROOT,
            "  %-16s %6d bytes, %3.0f %% of them text, %3.0f %% of the lines alike",
            trial.setting().text(),
            heard.bytes(),
            100 * heard.printable(),
            100 * heard.alike()));
  }

  /** Listens with one setting. */
  public Outcome listen(Setting setting, Duration limit) {
    WireSource.Attempt attempt = ports.apply(setting).open(() -> {});
    if (attempt instanceof WireSource.Attempt.Refused refused) {
      return new Outcome.NotOpened(refused.trouble().sentences());
    }
    try (Wire wire = ((WireSource.Attempt.Opened) attempt).wire()) {
      terminal.accept(
          "listening to %s at %s, for %d s at most; %s"
              .formatted(
                  port,
                  setting.text(),
                  limit.toSeconds(),
                  ask.map(what -> "asking \"%s\"".formatted(Excerpt.of(what.text())))
                      .orElse("nothing is sent")));
      PortEar ear = new PortEar(wire, ask, givenUp, nanos);
      SideBySide screen = new SideBySide(terminal);
      Sample sample = ear.hear(limit, screen::show);
      screen.show(sample);
      if (ear.isGone() && !givenUp.getAsBoolean()) {
        terminal.accept("%s went away".formatted(port));
      }
      return understood(setting, sample);
    }
  }

  private Outcome understood(Setting setting, Sample sample) {
    byte[] bytes = sample.bytes();
    if (bytes.length == 0) {
      tellSilence("in this time");
      return new Outcome.NotUnderstood();
    }
    LineGuess guess = LineGuess.of(sample);
    if (guess instanceof LineGuess.Proposed proposed) {
      tell(proposed.proposal());
      return new Outcome.Understood(SerialSection.of(port, setting, ask, proposed.proposal()));
    }
    if (FramingGuess.of(sample).isEmpty()) {
      terminal.accept("what came begins with  %s".formatted(Excerpt.of(bytes)));
    }
    terminal.accept(
        "%d bytes came, and no way to read them was found: %s"
            .formatted(bytes.length, ((LineGuess.Nothing) guess).reason()));
    terminal.accept(
        Legibility.of(bytes).printable() < TEXT
            ? "Much of it is not text: the speed or the parity may be wrong. Try: restpoint listen %s --try"
                .formatted(port)
            : "Listen for longer with --for 60s, or write the pattern by hand: adapters/README.md, Serial lines");
    return new Outcome.NotUnderstood();
  }

  private void tell(LineProposal proposal) {
    terminal.accept(
        "%d of %d lines are read by  %s"
            .formatted(proposal.read(), proposal.seen(), proposal.pattern()));
    proposal.doubts().forEach(doubt -> terminal.accept("look at this: %s".formatted(doubt)));
  }

  private void tellSilence(String when) {
    terminal.accept("nothing came from %s %s".formatted(port, when));
    if (ask.isPresent()) {
      terminal.accept(
          "Is it the right command, and does it want \\r, \\n or both at its end? Are transmit and receive the right way round?");
      return;
    }
    terminal.accept(
        "Is the meter on and set to send by itself? Are transmit and receive the right way round? A wrong speed would show as odd characters, not as nothing.");
    terminal.accept(
        "If it waits to be asked, its manual says for what. Try: restpoint listen %s --ask 'READ\\r\\n'. Nothing is sent unless you ask, because a command may change a meter's setting."
            .formatted(port));
  }
}
