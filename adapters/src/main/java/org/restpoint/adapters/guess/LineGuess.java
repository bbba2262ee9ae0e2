package org.restpoint.adapters.guess;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.restpoint.adapters.line.DecimalMark;
import org.restpoint.adapters.line.LineFormat;
import org.restpoint.adapters.quantity.Meaning;
import org.restpoint.adapters.quantity.PotentialScale;
import org.restpoint.adapters.quantity.TemperatureScale;

/**
 * Proposes how to read the lines of an unknown device, and proves it on the very lines by the
 * reader that the service uses.
 *
 * <p>Pure: the same sample gives the same answer.
 */
public sealed interface LineGuess {

  /** The longest pattern that a station file takes, in characters. */
  int LONGEST_PATTERN = 1_000;

  /** Fewer whole lines than this say too little. */
  int FEWEST_LINES = 3;

  /**
   * There is a way to read most of them.
   *
   * @param proposal which
   */
  record Proposed(LineProposal proposal) implements LineGuess {}

  /**
   * There is none.
   *
   * @param reason why, a clause without a full stop
   */
  record Nothing(String reason) implements LineGuess {}

  /** What a sample says. */
  static LineGuess of(Sample sample) {
    Optional<Framed> framed = FramingGuess.of(sample);
    if (framed.isEmpty()) {
      return new Nothing("nothing that comes looks like the end of a line");
    }
    if (framed.get().lines().size() < FEWEST_LINES) {
      return new Nothing(
          "%d whole lines came, and at least %d are needed"
              .formatted(framed.get().lines().size(), FEWEST_LINES));
    }
    ChecksumGuess checksum = ChecksumGuess.of(framed.get().lines(), framed.get().encoding());
    LineFormat format =
        new LineFormat(framed.get().end(), framed.get().encoding(), checksum.checksum());
    DecimalMark decimal = DecimalGuess.of(checksum.lines());
    Layout layout = Layout.of(checksum.lines(), decimal);
    if (layout.numbers().isEmpty()) {
      return new Nothing("there is no number in the lines");
    }
    if (2 * layout.lines() < checksum.lines().size()) {
      return new Nothing("the lines have little in common: no two of them in three look alike");
    }
    return of(format, decimal, layout, checksum, framed.get().lines().size());
  }

  private static LineGuess of(
      LineFormat format, DecimalMark decimal, Layout layout, ChecksumGuess checksum, int seen) {
    Roles roles = Roles.of(layout, ChannelGuess.of(layout), layout::shown);
    List<String> doubts = new ArrayList<>(roles.doubts());
    checksum.doubt().ifPresent(doubts::add);
    Optional<PotentialScale> potential =
        roles
            .potential()
            .map(role -> Scales.potential(role.group(), layout.columns().get(role.place())));
    Optional<TemperatureScale> temperature =
        roles
            .temperature()
            .flatMap(role -> Scales.temperature(role.group(), layout.columns().get(role.place())));
    if (roles.temperature().isPresent() && temperature.isEmpty()) {
      doubts.add("the resistance is none that a usual thermometer has: it is not read");
    }
    if (potential.isEmpty() && temperature.isEmpty()) {
      return new Nothing("none of the numbers can be a potential or a temperature");
    }
    Roles read =
        new Roles(
            roles.potential(),
            temperature.flatMap(scale -> roles.temperature()),
            roles.channel(),
            doubts);
    return proved(
        new PatternText(layout, decimal, read),
        new LineProposal(
            format,
            decimal,
            "",
            new Meaning(potential, temperature),
            channels(layout, roles),
            0,
            seen,
            doubts),
        checksum.lines());
  }

  private static List<String> channels(Layout layout, Roles roles) {
    return roles
        .channel()
        .map(place -> layout.columns().get(place).tokens())
        .orElse(List.of())
        .stream()
        .map(Token::text)
        .distinct()
        .sorted()
        .toList();
  }

  private static LineGuess proved(PatternText text, LineProposal draft, List<String> lines) {
    String best = text.whole();
    int most = 0;
    for (String pattern : List.of(text.whole(), text.openAtTheEnd())) {
      Pattern compiled = Pattern.compile(pattern);
      int read =
          (int)
              lines.stream()
                  .filter(
                      line ->
                          LineProposal.read(
                                  line,
                                  compiled,
                                  draft.meaning(),
                                  draft.decimal(),
                                  draft.channels())
                              .isPresent())
                  .count();
      if (read > most) {
        most = read;
        best = pattern;
      }
    }
    if (best.length() > LONGEST_PATTERN) {
      return new Nothing("the lines have more parts than a pattern can be written for");
    }
    if (most == 0) {
      return new Nothing("no number of the lines is believed as a potential or a temperature");
    }
    return new Proposed(
        new LineProposal(
            draft.format(),
            draft.decimal(),
            best,
            draft.meaning(),
            draft.channels(),
            most,
            draft.seen(),
            draft.doubts()));
  }
}
