package org.restpoint.adapters.guess;

import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.restpoint.adapters.line.DecimalMark;
import org.restpoint.adapters.line.LineChecksum.Checked;
import org.restpoint.adapters.line.LineFormat;
import org.restpoint.adapters.line.LinePattern;
import org.restpoint.adapters.line.LineReading;
import org.restpoint.adapters.quantity.Meaning;
import org.restpoint.adapters.quantity.Parsed;

/**
 * How lines can be read.
 *
 * @param format how bytes become lines
 * @param decimal what stands before the decimals of their numbers
 * @param pattern the pattern with its named groups
 * @param meaning what its numbers mean
 * @param channels whose lines were seen, in order; none where the pattern names no channel
 * @param read how many of the whole lines it reads, with values that are believed
 * @param seen how many whole lines there were
 * @param doubts what a person should look at, each a clause without a full stop
 */
public record LineProposal(
    LineFormat format,
    DecimalMark decimal,
    String pattern,
    Meaning meaning,
    List<String> channels,
    int read,
    int seen,
    List<String> doubts) {

  /** So many lines and no doubt are enough. */
  private static final int ENOUGH = 12;

  public LineProposal {
    channels = List.copyOf(channels);
    doubts = List.copyOf(doubts);
  }

  /** Whether more lines would hardly change it: nothing is in doubt and all of many are read. */
  public boolean isSure() {
    return read >= ENOUGH && read == seen && doubts.isEmpty();
  }

  /**
   * What it reads in one line.
   *
   * @param line without its end, with its checksum
   * @return empty where it does not read the line
   */
  public Optional<Seen> read(String line) {
    if (format.checksum().checked(line, format.encoding()) instanceof Checked.Sound sound) {
      return read(sound.line(), Pattern.compile(pattern), meaning, decimal, channels);
    }
    return Optional.empty();
  }

  /**
   * What was read in a line.
   *
   * @param channel whose it is; empty where the lines have none
   * @param values its values
   */
  public record Seen(Optional<String> channel, Parsed.Values values) {}

  static Optional<Seen> read(
      String line, Pattern pattern, Meaning meaning, DecimalMark decimal, List<String> channels) {
    List<Optional<String>> tried =
        channels.isEmpty()
            ? List.of(Optional.empty())
            : channels.stream().map(Optional::of).toList();
    for (Optional<String> channel : tried) {
      if (new LinePattern(pattern, meaning, decimal, channel).read(line)
              instanceof LineReading.Own own
          && own.said() instanceof Parsed.Values values) {
        return Optional.of(new Seen(channel, values));
      }
    }
    return Optional.empty();
  }
}
