package org.restpoint.config.file;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.restpoint.config.station.Calibrate.Every;
import org.restpoint.config.station.Checks;
import org.restpoint.config.station.Checks.Recovery;
import org.restpoint.config.station.Quantity;

class ChecksFileTest {

  @TempDir Path folder;

  private Checks checks(String text, String probe) {
    var probes = new Fixture(folder).understood(text).probes();
    return Objects.requireNonNull(probes.get(probe), probe).electrode().orElseThrow().checks();
  }

  @Test
  void checksAreWhatTheFileSaysOfThem() {
    assertThat(checks(Fixture.example("checks.yaml"), "no3"))
        .isEqualTo(
            new Checks(
                Optional.of(
                    new Checks.CheckStandard(
                        Optional.of("second"),
                        new Every.Samples(10),
                        Optional.of(new Recovery(85, 115)),
                        OptionalDouble.empty())),
                Optional.of(
                    new Checks.Blank(
                        new Every.Samples(20), Optional.of(new Quantity(0.8, "mg/L")))),
                Optional.of(
                    new Checks.Duplicate(
                        new Every.Span(Duration.ofHours(8)),
                        OptionalDouble.of(10),
                        OptionalDouble.empty())),
                Optional.of(
                    new Checks.Spike(
                        new Every.Samples(1),
                        0.5,
                        new Quantity(1000, "mg/L"),
                        50,
                        0.02,
                        Optional.of(new Recovery(80, 120))))));
    assertThat(checks(Fixture.example("checks.yaml"), "ph"))
        .isEqualTo(
            new Checks(
                Optional.of(
                    new Checks.CheckStandard(
                        Optional.of("b7"),
                        new Every.Never(),
                        Optional.empty(),
                        OptionalDouble.of(0.1))),
                Optional.empty(),
                Optional.of(
                    new Checks.Duplicate(
                        new Every.Never(), OptionalDouble.empty(), OptionalDouble.of(0.2))),
                Optional.empty()));
  }

  @Test
  void everyKeyButTheSpikesMayBeLeftOut() {
    String plain =
        Fixture.changed("checks.yaml", "{ every: 20 samples, below: 0.8 mg/L }", "{}")
            .replace("{ every: 8 h, within: 10 % }", "{}")
            .replace("{ standard: second, every: 10 samples, recovery: 85..115 % }", "{}")
            .replace(", uncertainty: 2 %, recovery: 80..120 %", "")
            .replace("spike: { every: sample, ", "spike: { ");
    Every never = new Every.Never();
    assertThat(checks(plain, "no3"))
        .isEqualTo(
            new Checks(
                Optional.of(
                    new Checks.CheckStandard(
                        Optional.empty(), never, Optional.empty(), OptionalDouble.empty())),
                Optional.of(new Checks.Blank(never, Optional.empty())),
                Optional.of(
                    new Checks.Duplicate(never, OptionalDouble.empty(), OptionalDouble.empty())),
                Optional.of(
                    new Checks.Spike(
                        never, 0.5, new Quantity(1000, "mg/L"), 50, 0.01, Optional.empty()))));
  }

  @Test
  void aCheckStandardOnAnotherBasisIsToldAsAStandardWouldBe() {
    assertThat(
            new Fixture(folder)
                .problems(
                    Fixture.changed(
                        "checks.yaml", "20 mg/L, basis: as-N, lot", "20 mg/L, basis: as-ion, lot")))
        .hasSize(1)
        .first()
        .asString()
        .contains("as-ion");
  }
}
