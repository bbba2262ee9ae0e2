package org.restpoint.acquisition.listen;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import org.restpoint.adapters.guess.Framed;
import org.restpoint.adapters.guess.FramingGuess;
import org.restpoint.adapters.guess.LineGuess;
import org.restpoint.adapters.guess.LineProposal.Seen;
import org.restpoint.adapters.guess.Sample;
import org.restpoint.adapters.quantity.Parsed;
import org.restpoint.adapters.text.Excerpt;

/** Shows each line as it came, and beside it what the proposal of that moment reads in it. */
public final class SideBySide {

  /** So many lines are enough to propose something, whatever is in doubt. */
  private static final int ENOUGH_LINES = 20;

  private static final int LEFT = 44;

  private final Consumer<String> terminal;
  private int shown;

  /**
   * @param terminal where lines are shown
   */
  public SideBySide(Consumer<String> terminal) {
    this.terminal = terminal;
  }

  /**
   * Shows what has come since the last time.
   *
   * @param sample all that has come so far
   * @return whether it is enough to propose something
   */
  public boolean show(Sample sample) {
    List<String> lines = FramingGuess.of(sample).map(Framed::lines).orElse(List.of());
    LineGuess guess = LineGuess.of(sample);
    for (String line : lines.subList(Math.min(shown, lines.size()), lines.size())) {
      terminal.accept(row(line, read(guess, line)));
    }
    shown = Math.max(shown, lines.size());
    boolean sure = guess instanceof LineGuess.Proposed proposed && proposed.proposal().isSure();
    return sure || lines.size() >= ENOUGH_LINES;
  }

  private static String read(LineGuess guess, String line) {
    return guess instanceof LineGuess.Proposed proposed
        ? proposed.proposal().read(line).map(SideBySide::shown).orElse("not read")
        : "?";
  }

  private static String shown(Seen seen) {
    return shown(seen.channel(), seen.values());
  }

  /** Values for a person: {@code channel 2: -12.34 mV 25.1 Cel}. */
  static String shown(Optional<String> channel, Parsed.Values values) {
    List<String> parts = new ArrayList<>();
    channel.ifPresent(name -> parts.add("channel %s:".formatted(name)));
    add(parts, values.millivolts(), "%.3f mV");
    add(parts, values.celsius(), "%.2f Cel");
    return String.join("  ", parts);
  }

  private static void add(List<String> parts, OptionalDouble value, String format) {
    value.ifPresent(number -> parts.add(String.format(Locale.ROOT, format, number)));
  }

  static String row(String raw, String parsed) {
    return "  %s | %s"
        .formatted(String.format(Locale.ROOT, "%-" + LEFT + "s", Excerpt.of(raw)), parsed);
  }
}
