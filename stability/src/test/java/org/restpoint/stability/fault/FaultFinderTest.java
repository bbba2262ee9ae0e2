package org.restpoint.stability.fault;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.restpoint.stability.Published;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.calibration.ResponseCurve;
import org.restpoint.stability.fault.Finding.Answering;
import org.restpoint.stability.fault.Finding.Faulty;
import org.restpoint.stability.fault.Finding.Untold;

/** Potentials are invented where no source is named. */
class FaultFinderTest {

  private static final FaultFinder NITRATE = new FaultFinder(-1, 25);

  private static FaultReading low(double millivolts) {
    return FaultReading.standard("low", -4, millivolts);
  }

  private static FaultReading high(double millivolts) {
    return FaultReading.standard("high", -3, millivolts);
  }

  private static FaultReading noisy(double millivolts, double noise, double spread) {
    return new FaultReading(
        "mid",
        OptionalDouble.empty(),
        millivolts,
        OptionalDouble.of(noise),
        OptionalDouble.of(spread));
  }

  private static Reason reason(Fault fault, Finding finding) {
    assertThat(finding).isInstanceOf(Faulty.class);
    Faulty faulty = (Faulty) finding;
    assertThat(faulty.fault()).isEqualTo(fault);
    assertThat(faulty.evidence().code()).isEqualTo(fault.code());
    return faulty.evidence();
  }

  @Test
  void theElectrodesOfTheSourcesAnswerAndTurnedRoundTheyAreReversed() {
    Published table = Published.table("electrodes-at-work");
    for (int i = 0; i < table.texts("ion").size(); i++) {
      double lowLog = Math.log10(table.numbers("lowMolesPerLitre")[i]);
      double highLog = Math.log10(table.numbers("highMolesPerLitre")[i]);
      double lowMillivolts = table.numbers("lowMillivolts")[i];
      double highMillivolts = table.numbers("highMillivolts")[i];
      FaultFinder finder = new FaultFinder((int) table.numbers("charge")[i], 25);
      Finding finding =
          finder.find(
              List.of(
                  FaultReading.standard("low", lowLog, lowMillivolts),
                  FaultReading.standard("high", highLog, highMillivolts)));
      assertThat(finding).isInstanceOf(Answering.class);
      double ideal = 59.159 / table.numbers("charge")[i];
      // The outer two of seven calcium standards draw 30.7 where all of them draw 30.3.
      assertThat(((Answering) finding).slopePercent() * ideal / 100)
          .isCloseTo(table.numbers("slope")[i], within(0.5));
      reason(
          Fault.REVERSED,
          finder.find(
              List.of(
                  FaultReading.standard("low", lowLog, -lowMillivolts),
                  FaultReading.standard("high", highLog, -highMillivolts))));
    }
  }

  @Test
  void aSlopeOfTheWrongSignIsReversed() {
    assertThat(reason(Fault.REVERSED, NITRATE.find(List.of(low(-200), high(-143)))))
        .isEqualTo(
            new Reason(
                "electrode-reversed",
                "the potential changes by 57.00 mV per decade, -96.3 % of the ideal -59.16: it goes"
                    + " the wrong way",
                "Look whether electrode and reference are swapped at the meter, whether the sign"
                    + " gets lost on the way, whether the ion's charge is set right, and whether"
                    + " standards were swapped."));
  }

  @Test
  void aPotentialThatStaysTheSameIsDead() {
    assertThat(reason(Fault.DEAD, NITRATE.find(List.of(low(180), high(178.5)))).text())
        .isEqualTo(
            "the potential changes by -1.50 mV per decade, 2.5 % of the ideal -59.16: the electrode"
                + " does not answer");
    assertThat(NITRATE.find(List.of(low(180), high(176)))).isInstanceOf(Answering.class);
  }

  @Test
  void zeroInSolutionsThatMustDifferIsShorted() {
    assertThat(reason(Fault.SHORTED_INPUT, NITRATE.find(List.of(low(0.4), high(-0.3)))))
        .isEqualTo(
            new Reason(
                "input-shorted",
                "all solutions read within 2 mV of 0, though they are 59 mV apart for an ideal"
                    + " electrode",
                "Look for water in plug or cable, for electrode and reference touching, for a"
                    + " shorting cap left on the input, and for broken glass or a torn membrane."));
  }

  @Test
  void zeroInOneSolutionIsAPotentialLikeAnyOther() {
    assertThat(NITRATE.find(List.of(high(0)))).isInstanceOf(Untold.class);
    assertThat(NITRATE.find(List.of(high(0), high(0.1)))).isInstanceOf(Untold.class);
    assertThat(NITRATE.find(List.of(low(57), high(0)))).isInstanceOf(Answering.class);
    Finding buffer = new FaultFinder(1, 25).find(List.of(FaultReading.standard("pH 7", -7, 0)));
    assertThat(buffer).isInstanceOf(Untold.class);
  }

  @Test
  void zeroThatTheLastLineMakesAnImpossibleConcentrationIsShorted() {
    FaultReading unknown =
        new FaultReading(
            "tile", OptionalDouble.empty(), 0, OptionalDouble.empty(), OptionalDouble.empty());
    ResponseCurve high = ResponseCurve.straight(180, -57, 25);
    ResponseCurve near = ResponseCurve.straight(40, -57, 25);
    assertThat(
            reason(Fault.SHORTED_INPUT, NITRATE.find(List.of(unknown), Optional.of(high))).text())
        .isEqualTo(
            "tile reads 0.0 mV, by the last calibration 10^3.2 mol/L, more than any solution holds");
    assertThat(NITRATE.find(List.of(unknown), Optional.of(near))).isInstanceOf(Untold.class);
  }

  @Test
  void aPotentialAtTheRailIsOpen() {
    assertThat(reason(Fault.OPEN_INPUT, NITRATE.find(List.of(low(1999), high(143)))))
        .isEqualTo(
            new Reason(
                "input-open",
                "low reads 1999 mV, which no electrode in a solution shows",
                "Look whether electrode and reference are plugged in and stand in the solution,"
                    + " whether a cable or plug is broken or wet, and whether an air bubble sits at"
                    + " the reference or its electrolyte is dried out."));
  }

  @Test
  void readingsThatWanderOrPickUpTheMainsAreOpen() {
    assertThat(reason(Fault.OPEN_INPUT, NITRATE.find(List.of(noisy(120, 25, 70)))).text())
        .isEqualTo(
            "the readings of mid scatter by 25.0 mV (standard deviation), like a wire that picks up"
                + " the mains");
    assertThat(reason(Fault.OPEN_INPUT, NITRATE.find(List.of(noisy(120, 9, 80)))).text())
        .isEqualTo("the readings of mid wander over 80 mV");
    // An open input may wander about zero, which is not a short.
    reason(Fault.OPEN_INPUT, NITRATE.find(List.of(noisy(0, 30, 90), low(0), high(0))));
  }

  @Test
  void withoutTwoKnownSolutionsNothingCanBeTold() {
    Reason missing =
        new Reason(
            "standards-too-few",
            "there are no two known solutions a factor of two or more apart",
            "Read a second standard, a decade away if there is one.");
    assertThat(NITRATE.find(List.of())).isEqualTo(new Untold(missing));
    assertThat(NITRATE.find(List.of(low(200), noisy(143, 0.1, 0.3))))
        .isEqualTo(new Untold(missing));
    assertThat(NITRATE.find(List.of(low(200), FaultReading.standard("nearly", -3.9, 194))))
        .isEqualTo(new Untold(missing));
  }

  @Test
  void whatIsNoReadingIsRefused() {
    assertThatIllegalArgumentException().isThrownBy(() -> low(Double.NaN));
    assertThatIllegalArgumentException().isThrownBy(() -> noisy(1, -1, 0));
    assertThatIllegalArgumentException().isThrownBy(() -> noisy(1, 0, Double.NaN));
    assertThatIllegalArgumentException().isThrownBy(() -> new FaultFinder(0, 25));
    assertThatIllegalArgumentException().isThrownBy(() -> new FaultFinder(1, -300));
  }
}
