package org.restpoint.adapters.recording;

import org.restpoint.adapters.recording.TextForm.DecimalMark;

/** Reads times as milliseconds since 1970; a fraction is rounded, a half to the even one. */
final class CountedMillis implements TimeText {

  /** Three thousand years, the same as for seconds; exact as a double. */
  private static final double MOST = 1e14;

  private final DecimalField number;
  private long epochMillis;

  CountedMillis(DecimalMark mark) {
    this.number = new DecimalField(mark.character());
  }

  @Override
  public boolean read(char[] text, int from, int to) {
    if (!number.read(text, from, to) || Math.abs(number.value()) > MOST) {
      return false;
    }
    epochMillis = (long) Math.rint(number.value());
    return true;
  }

  @Override
  public long epochMillis() {
    return epochMillis;
  }

  @Override
  public long laterMillis() {
    return epochMillis;
  }

  @Override
  public Skip skip() {
    return Skip.TIME;
  }

  @Override
  public String fault() {
    return "is not milliseconds since 1970 (1775138580250)";
  }
}
