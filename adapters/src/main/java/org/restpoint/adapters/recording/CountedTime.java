package org.restpoint.adapters.recording;

import java.time.Instant;
import org.restpoint.adapters.recording.TextForm.DecimalMark;

/** Reads times as seconds from a zero. */
final class CountedTime implements TimeText {

  private final DecimalMark mark;
  private final TimeField seconds;

  CountedTime(DecimalMark mark, Instant zero) {
    this.mark = mark;
    this.seconds = new TimeField(zero);
  }

  @Override
  public boolean read(char[] text, int from, int to) {
    return seconds.readSeconds(text, from, to, mark.character());
  }

  @Override
  public long epochMillis() {
    return seconds.epochMillis();
  }

  @Override
  public long laterMillis() {
    return seconds.epochMillis();
  }

  @Override
  public Skip skip() {
    return Skip.TIME;
  }

  @Override
  public String fault() {
    return "is not a number of seconds (12%s25)".formatted(mark.character());
  }
}
