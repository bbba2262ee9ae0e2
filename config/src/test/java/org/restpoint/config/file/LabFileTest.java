package org.restpoint.config.file;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.config.station.Activity;
import org.restpoint.config.station.Calibrate;
import org.restpoint.config.station.Compensation;
import org.restpoint.config.station.Electrode;
import org.restpoint.config.station.Interferent;
import org.restpoint.config.station.LowEnd;
import org.restpoint.config.station.Quantity;
import org.restpoint.config.station.ReportableRange;
import org.restpoint.config.station.SettleRule;
import org.restpoint.config.station.StandardSolution;
import org.restpoint.config.station.StandardSolution.Value;
import org.restpoint.config.station.Station;

/** What a station file may say of an electrode and of a pH standard, read whole and by default. */
class LabFileTest {

  @TempDir Path folder;
  private Fixture fixture;

  @BeforeEach
  void openFixture() {
    fixture = new Fixture(folder);
  }

  private Station lab() {
    return fixture.understood(Fixture.example("lab.yaml"));
  }

  private Station lab(String from, String to) {
    return fixture.understood(Fixture.changed("lab.yaml", from, to));
  }

  private static Electrode electrode(Station station, String name) {
    return Objects.requireNonNull(station.probes().get(name), name).electrode().orElseThrow();
  }

  private static StandardSolution standard(Station station, String name) {
    return Objects.requireNonNull(station.standards().get(name), name);
  }

  private static Value value(Station station, String name) {
    return standard(station, name).value();
  }

  @Test
  void aStandardIsABufferByItsName() {
    assertThat(standard(lab(), "b4"))
        .isEqualTo(
            new StandardSolution(
                "b4",
                new Value.OfBuffer("phthalate", 0.005),
                Optional.of("B1"),
                Optional.of(LocalDate.of(2027, 1, 31))));
  }

  @Test
  void aStandardIsATableOfPhInTheOrderOfTemperature() {
    Value.OfPhTable table = (Value.OfPhTable) value(lab(), "b7");

    NavigableMap<Double, Double> rows = new TreeMap<>(Map.of(5.0, 7.09, 20.0, 7.02, 25.0, 7.0));
    assertThat(table).isEqualTo(new Value.OfPhTable(rows, 0.03));
    assertThat(table.phByCelsius().keySet()).containsExactly(5.0, 20.0, 25.0);
  }

  @Test
  void aStandardInPhHasAnUncertaintyWhereTheFileGivesNone() {
    assertThat(value(lab(), "b9")).isEqualTo(new Value.OfBuffer("borate", 0.01));
    assertThat(value(lab(), "b10")).isEqualTo(new Value.OfPh(10, 0.02));
  }

  @Test
  void anUncertaintyInPhMayBeWrittenInUcum() {
    Station station = lab("uncertainty: 0.005 pH", "uncertainty: \"0.005 [pH]\"");

    assertThat(value(station, "b4")).isEqualTo(new Value.OfBuffer("phthalate", 0.005));
  }

  @Test
  void theLimitsOfPhAreStandards() {
    assertThat(value(lab("pH: 10 }", "pH: 0 }"), "b10")).isEqualTo(new Value.OfPh(0, 0.02));
    assertThat(value(lab("pH: 10 }", "pH: 14.0 }"), "b10")).isEqualTo(new Value.OfPh(14, 0.02));
  }

  @Test
  void hydrogenIsMeasuredInPhWhetherTheFileSaysSoOrNot() {
    assertThat(electrode(lab(), "ph").unit()).isEqualTo("[pH]");
    assertThat(electrode(lab("    unit: pH\n", ""), "ph").unit()).isEqualTo("[pH]");
    assertThat(electrode(lab("unit: pH", "unit: \"[pH]\""), "ph").unit()).isEqualTo("[pH]");
    assertThat(electrode(lab(), "ph").basis()).isEmpty();
  }

  @Test
  void aCompensationIsIdealByWordAndByDefault() {
    String isopotential = "compensation: { isopotential: 50 mg/L, uncertainty: 30 % }";

    assertThat(electrode(lab(isopotential, "compensation: ideal"), "no3").compensation())
        .isEqualTo(new Compensation.Ideal());
    assertThat(electrode(lab("    " + isopotential + "\n", ""), "no3").compensation())
        .isEqualTo(new Compensation.Ideal());
  }

  @Test
  void aCompensationTurnsAboutAConcentrationOrAPh() {
    assertThat(electrode(lab(), "no3").compensation())
        .isEqualTo(new Compensation.Isopotential(new Quantity(50, "mg/L"), 0.3));
    assertThat(electrode(lab(), "ph").compensation())
        .isEqualTo(new Compensation.IsopotentialPh(7, 0.3));
    assertThat(electrode(lab("50 mg/L, uncertainty: 30 %", "50 mg/L"), "no3").compensation())
        .isEqualTo(new Compensation.Isopotential(new Quantity(50, "mg/L"), 0.5));
    assertThat(electrode(lab("7.00 pH, uncertainty: 0.3 pH", "7.00 pH"), "ph").compensation())
        .isEqualTo(new Compensation.IsopotentialPh(7, 0.5));
    String share = "50 mg/L, uncertainty: 30 %";
    assertThat(electrode(lab(share, "50 mg/L, uncertainty: 5 mg/L"), "no3").compensation())
        .isEqualTo(new Compensation.Isopotential(new Quantity(50, "mg/L"), 0.1));
  }

  @Test
  void aCompensationIsACoefficientMeasuredInOneSolution() {
    assertThat(electrode(lab(), "cl").compensation())
        .isEqualTo(new Compensation.MeasuredCoefficient(-0.9, new Quantity(2, "mmol/L"), 0.05));
    assertThat(electrode(lab(", uncertainty: 50 µV/K", ""), "cl").compensation())
        .isEqualTo(new Compensation.MeasuredCoefficient(-0.9, new Quantity(2, "mmol/L"), 0.1));
    assertThat(
            electrode(
                    lab(
                        "isopotential: 7.00 pH, uncertainty: 0.3 pH",
                        "coefficient: 100 uV/K, at: 4.01 pH"),
                    "ph")
                .compensation())
        .isEqualTo(new Compensation.MeasuredCoefficient(0.1, new Quantity(4.01, "[pH]"), 0.1));
  }

  @Test
  void aStandardMayMoveBySoMuchOrBySoMuchOfItsConcentration() {
    String stock = "stock-uncertainty: 0.5 %";
    String moved = stock + "\n      moved-within: ";

    assertThat(electrode(lab(), "no3").calibrate().movedWithin()).isEqualTo(Calibrate.USUAL_MOVE);
    assertThat(electrode(lab(stock, moved + "4 mV"), "no3").calibrate().movedWithin())
        .isEqualTo(new SettleRule.Within.Millivolts(4));
    assertThat(electrode(lab(stock, moved + "20 %"), "no3").calibrate().movedWithin())
        .isEqualTo(new SettleRule.Within.Percent(20));
  }

  @Test
  void anActivityKeepsTheUnitsOfTheFile() {
    assertThat(electrode(lab(), "no3").activity())
        .contains(
            new Activity(
                Activity.Model.DAVIES,
                new Quantity(15, "mmol/L"),
                0.1,
                new Activity.OfStandards.Given(new Quantity(0.1, "mol/L"))));
    assertThat(electrode(lab(), "ph").activity()).isEmpty();
  }

  @Test
  void anActivityTakesTheStandardsOwnSaltByWordAndByDefault() {
    Activity own =
        new Activity(
            Activity.Model.DEBYE_HUECKEL,
            new Quantity(0.02, "mol/L"),
            0.2,
            new Activity.OfStandards.Own());

    assertThat(electrode(lab(), "cl").activity()).contains(own);
    assertThat(
            electrode(lab("sample: 0.02 mol/L", "sample: 0.02 mol/L, standards: own"), "cl")
                .activity())
        .contains(own);
  }

  @Test
  void anInterferentIsKnownOrAtMostSoMuch() {
    assertThat(electrode(lab(), "no3").interferents())
        .containsExactly(
            new Interferent(
                "chloride",
                0.005,
                new Interferent.Level.Known(new Quantity(40, "mg/L"), 0.3),
                Optional.empty()),
            new Interferent(
                "nitrite",
                0.06,
                new Interferent.Level.AtMost(new Quantity(5, "mg/L")),
                Optional.of("as-N")));
    assertThat(electrode(lab(), "ph").interferents())
        .containsExactly(
            new Interferent(
                "sodium",
                1e-11,
                new Interferent.Level.AtMost(new Quantity(0.5, "mol/L")),
                Optional.empty()));
  }

  @Test
  void anAmountOfAnInterferentNeedsNoBasisAndHasAnUncertaintyByDefault() {
    assertThat(electrode(lab(), "cl").interferents())
        .containsExactly(
            new Interferent(
                "nitrate",
                0.03,
                new Interferent.Level.Known(new Quantity(0.1, "mmol/L"), 0.5),
                Optional.empty()));
  }

  @Test
  void aLowEndIsStraightCurvedOrFixed() {
    String fixed = "low-end: { fixed: 0.05 mg/L, uncertainty: 0.01 mg/L }";

    assertThat(electrode(lab(), "no3").calibrate().lowEnd())
        .isEqualTo(new LowEnd.Fixed(new Quantity(0.05, "mg/L"), 0.2));
    assertThat(electrode(lab(), "cl").calibrate().lowEnd()).isEqualTo(new LowEnd.Curved());
    assertThat(electrode(lab(fixed, "low-end: straight"), "no3").calibrate().lowEnd())
        .isEqualTo(new LowEnd.Straight());
    assertThat(electrode(lab("0.01 mg/L", "40 %"), "no3").calibrate().lowEnd())
        .isEqualTo(new LowEnd.Fixed(new Quantity(0.05, "mg/L"), 0.4));
    assertThat(electrode(lab(", uncertainty: 0.01 mg/L", ""), "no3").calibrate().lowEnd())
        .isEqualTo(new LowEnd.Fixed(new Quantity(0.05, "mg/L"), 0.2));
    assertThat(electrode(lab("range: 2..12 pH", "low-end: straight"), "ph").calibrate().lowEnd())
        .isEqualTo(new LowEnd.Straight());
  }

  @Test
  void aRangeIsOfConcentrationsOrOfPh() {
    assertThat(electrode(lab(), "no3").calibrate().range())
        .contains(new ReportableRange(new Quantity(0.5, "mg/L"), new Quantity(200, "mg/L")));
    assertThat(electrode(lab(), "ph").calibrate().range())
        .contains(new ReportableRange(new Quantity(2, "[pH]"), new Quantity(12, "[pH]")));
    assertThat(electrode(lab(), "cl").calibrate().range()).isEmpty();
    assertThat(electrode(lab("0.5..200 mg/L", "7 .. 14000µmol/L"), "no3").calibrate().range())
        .contains(new ReportableRange(new Quantity(7, "umol/L"), new Quantity(14_000, "umol/L")));
    assertThat(electrode(lab("2..12 pH", "0..14 pH"), "ph").calibrate().range())
        .contains(new ReportableRange(new Quantity(0, "[pH]"), new Quantity(14, "[pH]")));
  }

  @Test
  void theLimitsOfTemperatureAndTheStocksShareAreReadAndHaveDefaults() {
    assertThat(electrode(lab(), "no3").calibrate().temperatureWithinKelvin()).isEqualTo(5);
    assertThat(electrode(lab(), "no3").calibrate().stockRelativeUncertainty()).isEqualTo(0.005);
    assertThat(electrode(lab(), "cl").calibrate().temperatureWithinKelvin()).isEqualTo(2);
    assertThat(electrode(lab(), "cl").calibrate().stockRelativeUncertainty()).isZero();
  }
}
