package org.restpoint.adapters.guess;

import static org.assertj.core.api.Assertions.assertThat;
import static org.restpoint.adapters.guess.Meter.noise;
import static org.restpoint.adapters.guess.Meter.proposed;
import static org.restpoint.adapters.guess.Meter.written;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.restpoint.adapters.checksum.Crc16;
import org.restpoint.adapters.checksum.Xor;
import org.restpoint.adapters.line.DecimalMark;
import org.restpoint.adapters.line.LineChecksum;
import org.restpoint.adapters.line.LineEncoding;
import org.restpoint.adapters.line.LineEnd;
import org.restpoint.adapters.quantity.PotentialScale;
import org.restpoint.adapters.quantity.TemperatureScale;

/** Invented meters, and what is proposed for each. */
class LineGuessTest {

  @Test
  void namesAndUnitsSayWhatTheNumbersAre() {
    LineProposal proposal =
        proposed(i -> written("E=%.2f mV T=%.1f C\r\n", -12.34 + noise(i), 25.1 + noise(i) / 4));

    assertThat(proposal.pattern())
        .isEqualTo("E=(?<millivolts>[-+.\\d]+) mV T=(?<celsius>[-+.\\d]+) C");
    assertThat(proposal.read()).isEqualTo(16).isEqualTo(proposal.seen());
    assertThat(proposal.isSure()).isTrue();
  }

  @Test
  void aDecimalCommaAndChannelsThatTakeTurnsAreSeenAndWhatWasGuessedIsSaid() {
    LineProposal proposal =
        proposed(
            i ->
                written(
                        "%02d;%+08.2f;%.1f\r\n",
                        1 + i % 2, (i % 2 == 0 ? 187.42 : 92.1) + noise(i), 21.9 + noise(i) / 4)
                    .replace('.', ','));

    assertThat(proposal.decimal()).isEqualTo(DecimalMark.COMMA);
    assertThat(proposal.pattern())
        .isEqualTo("(?<channel>\\d+);(?<millivolts>[-+,\\d]+);(?<celsius>[-+,\\d]+)");
    assertThat(proposal.channels()).containsExactly("01", "02");
    assertThat(proposal.doubts())
        .containsExactly(
            "number 2 of the line (91.79 to 187.82) is taken for the potential; it could as well be"
                + " number 3 of the line (21.8 to 22)",
            "number 3 of the line (21.8 to 22) is taken for the temperature by its values alone");
    assertThat(proposal.isSure()).isFalse();
  }

  @Test
  void recordsOfOneLengthWithoutAnEndAreSeenByTheirPauses() {
    LineProposal proposal =
        proposed(
            i -> written("%10.5f V  %.2fK", -0.05916 + noise(i) / 1000, 298.25 + noise(i) / 4));

    assertThat(proposal.format().end()).isEqualTo(new LineEnd.Width(21));
    assertThat(proposal.pattern()).isEqualTo("(?<volts>[-+.\\d]+) V +(?<kelvin>[-+.\\d]+)K");
    assertThat(proposal.meaning().temperature()).contains(TemperatureScale.KELVIN);
  }

  @Test
  void aChecksumIsFoundByTryingAllThatAreKnown() {
    LineProposal proposal =
        proposed(
            i -> {
              String said = written("M1,%.1f,mV,%.1f,C", 123.4 + noise(i), 25 + noise(i) / 4);
              return written(
                  "$%s*%02X\r\n", said, Xor.of(said.getBytes(StandardCharsets.US_ASCII)));
            });

    assertThat(proposal.format().checksum()).isEqualTo(new LineChecksum.ExclusiveOr());
    assertThat(proposal.pattern())
        .isEqualTo("\\$M1,(?<millivolts>[-+.\\d]+),mV,(?<celsius>[-+.\\d]+),C");
  }

  @Test
  void countsAndOhmsGetTheUsualConverterAndTheNearestThermometer() {
    LineProposal proposal =
        proposed(
            i -> {
              String said = written("c %d r %d", 33012 + Math.round(10 * noise(i)), 10234 + i % 3);
              int crc = Crc16.ARC.of(said.getBytes(StandardCharsets.US_ASCII));
              return written("%s %04x\r", said, crc);
            });

    assertThat(proposal.format().checksum()).isEqualTo(new LineChecksum.Crc(Crc16.ARC));
    assertThat(proposal.pattern()).isEqualTo("c (?<counts>[-+.\\d]+) r (?<ohms>[-+.\\d]+)");
    assertThat(proposal.meaning().potential()).contains(PotentialScale.counts(0.0625, -2048));
    assertThat(proposal.meaning().temperature().orElseThrow().told(10_000))
        .isEqualTo(new TemperatureScale.Told.Celsius(25));
  }

  @Test
  void aMarkOfItsOwnAndASignApartFromItsDigitsAreRead() {
    LineProposal proposal =
        proposed(i -> written("\u0002%s%6.1f mV\u0003", noise(i) < 0 ? "-" : " ", 12.4 + noise(i)));

    assertThat(proposal.format().end()).isEqualTo(new LineEnd.Mark("\u0003"));
    assertThat(proposal.pattern()).isEqualTo("\\x02 *(?<millivolts>[-+]? *[.\\d]+) mV");
    assertThat(proposal.read()).isEqualTo(16);
  }

  @Test
  void timesOtherQuantitiesAndStatusesAreMatchedLoosely() {
    LineProposal proposal =
        proposed(
            i ->
                written(
                    "2026-04-02 14:03:%02d pH 3.2%d %.1f mV CH%d %s\r\n",
                    i, i % 3, 100 * (1 + i % 3) + noise(i), 1 + i % 3, i % 4 == 0 ? "stab" : "??"));

    assertThat(proposal.pattern())
        .isEqualTo(
            "[-+:./,TZ\\d]+ [-+:./,TZ\\d]+ pH [-+.\\d]+ (?<millivolts>[-+.\\d]+) mV"
                + " CH(?<channel>\\d+)(?:[^-+.,\\d].*)?");
    assertThat(proposal.read()).isEqualTo(16);
  }

  @Test
  void utf16IsToldByItsZeros() {
    LineProposal proposal =
        ((LineGuess.Proposed)
                LineGuess.of(
                    new Sample(
                        Meter.bursts(i -> written("E=%.2f mV\r\n", noise(i))).stream()
                            .map(line -> new String(line, StandardCharsets.US_ASCII))
                            .map(line -> line.getBytes(StandardCharsets.UTF_16BE))
                            .toList(),
                        true)))
            .proposal();

    assertThat(proposal.format().encoding()).isEqualTo(LineEncoding.UTF_16BE);
    assertThat(proposal.pattern()).isEqualTo("E=(?<millivolts>[-+.\\d]+) mV");
  }

  @Test
  void aThermometerAloneIsOne() {
    LineProposal proposal = proposed(i -> written("T1=%.2f \u00b0C\r\n", 21 + noise(i)));

    assertThat(proposal.pattern()).isEqualTo("T1=(?<celsius>[-+.\\d]+) .C");
    assertThat(proposal.meaning().potential()).isEmpty();
  }

  @Test
  void aLineWhoseBeginningWasMissedIsNotCounted() {
    List<byte[]> bursts = new ArrayList<>(Meter.bursts(i -> written("%.1f mV\r\n", noise(i))));
    bursts.add(0, "4 mV\r\n".getBytes(StandardCharsets.US_ASCII));

    LineGuess guess = LineGuess.of(new Sample(bursts, false));

    assertThat(((LineGuess.Proposed) guess).proposal().seen()).isEqualTo(16);
  }

  @Test
  void whatCannotBeReadIsSaid() {
    assertThat(LineGuess.of(Meter.heard(i -> "the door is open\r\n")))
        .isEqualTo(new LineGuess.Nothing("there is no number in the lines"));
    assertThat(
            LineGuess.of(
                new Sample(List.of("E=1 mV\r\n".getBytes(StandardCharsets.US_ASCII)), true)))
        .isEqualTo(new LineGuess.Nothing("1 whole lines came, and at least 3 are needed"));
    assertThat(LineGuess.of(new Sample(List.of(), true)))
        .isEqualTo(new LineGuess.Nothing("nothing that comes looks like the end of a line"));
    assertThat(LineGuess.of(Meter.heard(i -> "pH 7.0" + i % 3 + "\r\n")))
        .isEqualTo(
            new LineGuess.Nothing("none of the numbers can be a potential or a temperature"));
  }

  @Test
  void noiseIsNeverMoreThanNothingOrAPatternThatReadsWhatItSays() {
    Random random = new Random(5);
    String letters = "0123456789.,;-+ EeTmVC=:*$\r\n\u0002\u0003\u0000\u00f8\\()[{?";
    for (int round = 0; round < 2_000; round++) {
      List<byte[]> bursts = new ArrayList<>();
      for (int burst = 0; burst < random.nextInt(8); burst++) {
        StringBuilder text = new StringBuilder();
        int length = random.nextInt(60);
        for (int i = 0; i < length; i++) {
          text.append(letters.charAt(random.nextInt(letters.length())));
        }
        bursts.add(text.toString().getBytes(StandardCharsets.ISO_8859_1));
      }
      if (LineGuess.of(new Sample(bursts, random.nextBoolean()))
          instanceof LineGuess.Proposed proposed) {
        assertThat(proposed.proposal().read()).isBetween(1, proposed.proposal().seen());
      }
    }
  }
}
