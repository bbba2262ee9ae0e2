package org.restpoint.acquisition.listen;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.restpoint.adapters.link.LinkTrouble;
import org.restpoint.adapters.serial.PortSettings.Parity;
import org.restpoint.adapters.wire.Wire;
import org.restpoint.adapters.wire.WireSource;

/** The trying of speeds and framings, on ports made by hand. */
class TrialsTest {

  private static final String CLEAR = "E=-12.34 mV T=25.1 C\r\n";
  private static final String NOISE = "\u0000\u00f8\u0080x\u00fe\u0006\u0098f\u001e\u00e0";

  private final AtomicLong nanos = new AtomicLong();
  private final List<String> tried = new ArrayList<>();
  private int written;
  private int open;

  /** A port that sends the text of its setting twice a second. */
  private final class Port implements WireSource, Wire {

    private final String text;

    Port(String text) {
      this.text = text;
    }

    @Override
    public String name() {
      return "a port made by hand";
    }

    @Override
    public Attempt open(Runnable farewell) {
      open++;
      return new Attempt.Opened(this);
    }

    @Override
    public LinkTrouble lost() {
      throw new AssertionError("it is never lost");
    }

    @Override
    public LinkTrouble back() {
      throw new AssertionError("it is never lost");
    }

    @Override
    public int read(byte[] into) {
      boolean speaks = nanos.getAndAdd(100_000_000) % 500_000_000 == 0;
      byte[] bytes = text.getBytes(StandardCharsets.ISO_8859_1);
      System.arraycopy(bytes, 0, into, 0, speaks ? bytes.length : 0);
      return speaks ? bytes.length : 0;
    }

    @Override
    public boolean write(byte[] bytes) {
      written++;
      return true;
    }

    @Override
    public void discardInput() {
      // It holds nothing.
    }

    @Override
    public void close() {
      open--;
    }
  }

  private Trials.Outcome run(Function<Setting, WireSource> ports) {
    return new Trials(ports, () -> false, nanos::get, trial -> tried.add(trial.setting().text()))
        .run();
  }

  private static Setting heard(Trials.Outcome outcome) {
    return ((Trials.Outcome.Heard) outcome).best().setting();
  }

  @Test
  void theFirstSettingThatGivesClearLinesEndsIt() {
    Trials.Outcome outcome = run(setting -> new Port(setting.baud() == 38400 ? CLEAR : NOISE));

    assertThat(heard(outcome)).isEqualTo(new Setting(38400, 8, Parity.NONE));
    assertThat(tried).containsExactly("9600 baud, 8N1", "19200 baud, 8N1", "38400 baud, 8N1");
    assertThat(written).isZero();
    assertThat(open).isZero();
  }

  @Test
  void framingsFollowWhereNoSpeedIsGoodBeginningWithTheOneThatGaveMostText() {
    Setting right = new Setting(4800, 7, Parity.EVEN);
    String half = "\u00c5=\u00b2\u00b1.4 \u00edV\u008d\n";

    Trials.Outcome outcome =
        run(
            setting ->
                new Port(setting.equals(right) ? CLEAR : setting.baud() == 4800 ? half : NOISE));

    assertThat(heard(outcome)).isEqualTo(right);
    assertThat(tried).hasSize(9).last().isEqualTo("4800 baud, 7E1");
  }

  @Test
  void silenceAtEverySpeedIsSilenceAndIsNotTriedInOtherFramings() {
    assertThat(run(setting -> new Port(""))).isEqualTo(new Trials.Outcome.Silent());
    assertThat(tried).hasSize(8);
  }

  @Test
  void noiseEverywhereGivesTheBestOfAll() {
    Trials.Outcome outcome = run(setting -> new Port(NOISE));

    assertThat(((Trials.Outcome.Heard) outcome).best().legibility().isGood()).isFalse();
    assertThat(tried).hasSize(32).doesNotHaveDuplicates();
  }

  @Test
  void aPortThatDoesNotOpenEndsIt() {
    LinkTrouble trouble = new LinkTrouble("port-absent", "it is absent", "Plug it in");
    WireSource absent =
        new WireSource() {
          @Override
          public String name() {
            return "an absent port";
          }

          @Override
          public Attempt open(Runnable farewell) {
            return new Attempt.Refused(trouble, true);
          }

          @Override
          public LinkTrouble lost() {
            return trouble;
          }

          @Override
          public LinkTrouble back() {
            return trouble;
          }
        };

    assertThat(run(setting -> absent)).isEqualTo(new Trials.Outcome.Closed(trouble));
  }
}
