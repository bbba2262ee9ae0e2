package org.restpoint.acquisition.slip;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.event.Result.Amount;
import org.restpoint.acquisition.event.Result.Interference;
import org.restpoint.acquisition.event.Result.Reported;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.uncertainty.BudgetLine;

/** How sure the number is, in words; and every flag. */
final class SurenessSection {

  /** A source below this is not what most of the doubt comes from. */
  private static final double MOST_PERCENT = 50;

  private static final String TWICE =
      "(k%s=%s2)".formatted(AmountWords.NO_BREAK, AmountWords.NO_BREAK);

  private SurenessSection() {}

  static Slip.Section of(Result result, Subject subject) {
    Parts parts = new Parts("How sure");
    NumberSection.number(result).ifPresent(number -> number(parts, number, result));
    parts.fact("Quality", quality(result.quality()));
    Set<String> told = result.reasons().stream().map(Reason::code).collect(Collectors.toSet());
    result.flags().stream()
        .filter(flag -> !told.contains(flag))
        .forEach(flag -> parts.fact("Flag", "%s (%s)".formatted(FlagWords.of(flag), flag)));
    result.interference().orElse(List.of()).forEach(ion -> parts.sentence(interference(ion)));
    result
        .revised()
        .ifPresent(
            again ->
                parts.sentence(
                    "Worked out again on %s: %s"
                        .formatted(subject.time(again.time()), again.because())));
    return parts.section();
  }

  private static void number(Parts parts, AmountWords number, Result result) {
    switch (number.relation()) {
      case "<" -> parts.sentence("So little cannot be told in figures; it is not known to be zero");
      case ">" -> parts.sentence("So much cannot be told in figures; dilute it and read it again");
      default -> {
        number
            .interval()
            .ifPresent(
                interval ->
                    parts.sentence(
                        (result.flags().isEmpty()
                                ? "The true value lies %s in about 95 of 100 such readings %s"
                                : "But for what the flags say, the true value lies %s in about 95 of"
                                    + " 100 such readings %s")
                            .formatted(interval, TWICE)));
        largest(result).ifPresent(parts::sentence);
      }
    }
    if (result.verification().isEmpty()) {
      parts.sentence("How the sample was taken, and ions that nobody named, are not counted in");
    }
  }

  /** The preparation where it makes most of it, else the largest source in the vessel. */
  private static Optional<String> largest(Result result) {
    double prepared = percentOfThePreparation(result);
    if (prepared >= MOST_PERCENT) {
      return Optional.of(
          "Most of the doubt comes from: the preparation (%d %%)".formatted(Math.round(prepared)));
    }
    return result.budget().orElse(List.of()).stream()
        .max(Comparator.comparingDouble(BudgetLine::sharePercent))
        .filter(line -> line.sharePercent() >= MOST_PERCENT)
        .map(
            line ->
                "Most of the doubt comes from: %s (%d %%)"
                    .formatted(line.source(), Math.round(line.sharePercent())));
  }

  /** Its share of the relative variance of what is reported, %. */
  private static double percentOfThePreparation(Result result) {
    if (result.preparation().isEmpty()) {
      return 0;
    }
    Reported told = result.reported().orElseThrow();
    Amount read = result.concentration().orElseThrow();
    double whole = Math.pow(told.uncertainty() / told.value(), 2);
    double vessel = Math.pow(read.uncertainty() / read.value(), 2);
    return whole > vessel ? 100 * (whole - vessel) / whole : 0;
  }

  private static String quality(int flag) {
    return switch (flag) {
      case 1 -> "1, passed";
      case 2 -> "2, not judged";
      case 3 -> "3, suspect: see the flags";
      case 4 -> "4, failed";
      case 9 -> "9, missing";
      default -> String.valueOf(flag);
    };
  }

  private static String interference(Interference ion) {
    String size =
        ion.biasPercent().isPresent()
            ? AmountWords.number(Math.abs(ion.biasPercent().getAsDouble())) + " %"
            : AmountWords.number(Math.abs(ion.bias()));
    String way = ion.bias() < 0 ? "low" : "high";
    return ion.corrected()
        ? "%s made it read too %s by %s; that is corrected".formatted(ion.ion(), way, size)
        : "%s may make it read too %s by up to %s".formatted(ion.ion(), way, size);
  }
}
