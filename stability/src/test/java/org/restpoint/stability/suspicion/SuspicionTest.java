package org.restpoint.stability.suspicion;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.aggregator.ArgumentsAccessor;
import org.junit.jupiter.params.provider.CsvFileSource;

class SuspicionTest {

  @ParameterizedTest(name = "{0}")
  @CsvFileSource(
      resources = "/suspicions.csv",
      delimiter = '|',
      useHeadersInDisplayName = true,
      ignoreLeadingAndTrailingWhitespace = true)
  void theCausesStandInTheirOrder(ArgumentsAccessor row) {
    List<Cause> causes = new Suspicion(clues(row)).causes();
    assertThat(causes.stream().map(cause -> cause.suspect().code())).isEqualTo(words(row, 16));
    assertThat(causes)
        .allSatisfy(
            cause -> {
              assertThat(cause.evidence()).isNotBlank();
              assertThat(cause.remedy()).endsWith(".");
            });
  }

  private static Clues clues(ArgumentsAccessor row) {
    OptionalDouble moved = number(row, 1);
    return new Clues(
        moved.isPresent()
            ? Optional.of(
                new Moved(
                    moved.getAsDouble(),
                    1,
                    Math.pow(10, moved.getAsDouble() / -57),
                    number(row, 2)))
            : Optional.empty(),
        flag(row, 3)
            .map(
                settled ->
                    new HowItRested(
                        settled,
                        number(row, 4).orElseThrow(),
                        number(row, 6).orElseThrow(),
                        flag(row, 8).orElseThrow(),
                        false)),
        number(row, 5),
        number(row, 7),
        new Circumstances(flag(row, 9), flag(row, 10), number(row, 11)),
        words(row, 12).stream().map(Double::valueOf).toList(),
        number(row, 13).isPresent()
            ? Optional.of(
                new Clues.Warmth(
                    25 + number(row, 13).getAsDouble(), 25, 2, number(row, 14).orElse(0)))
            : Optional.empty(),
        number(row, 15).isPresent()
            ? OptionalLong.of((long) number(row, 15).getAsDouble())
            : OptionalLong.empty());
  }

  private static List<String> words(ArgumentsAccessor row, int column) {
    return Optional.ofNullable(row.getString(column)).stream()
        .flatMap(cell -> Stream.of(cell.split(" ", -1)))
        .toList();
  }

  private static OptionalDouble number(ArgumentsAccessor row, int column) {
    String cell = row.getString(column);
    return cell == null ? OptionalDouble.empty() : OptionalDouble.of(Double.parseDouble(cell));
  }

  private static Optional<Boolean> flag(ArgumentsAccessor row, int column) {
    return Optional.ofNullable(row.getString(column)).map("yes"::equals);
  }
}
