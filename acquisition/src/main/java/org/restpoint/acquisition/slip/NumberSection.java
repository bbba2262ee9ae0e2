package org.restpoint.acquisition.slip;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Optional;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.event.Result.Amount;
import org.restpoint.acquisition.event.Result.Reported;
import org.restpoint.stability.chemistry.Analyte;
import org.restpoint.stability.chemistry.Basis;

/** The number, or that there is none and why. */
final class NumberSection {

  private NumberSection() {}

  static Slip.Section of(Result result, Subject subject) {
    Parts parts = new Parts("The number");
    Optional<AmountWords> number = number(result);
    if (number.isEmpty()) {
      parts.headline(
          switch (result.outcome()) {
            case UNSETTLED -> "No number: it did not come to rest";
            case REFUSED -> "No number: it was refused";
            case SETTLED -> "No number";
          });
      result.reasons().forEach(why -> parts.sentence(why.text()).sentence(why.remedy()));
      return parts.section();
    }
    parts.headline(number.get().words(subject.analyte()));
    result.reported().ifPresent(reported -> parts.fact("In", reported.kind()));
    result
        .concentration()
        .filter(cup -> !isTheSame(cup, result.reported()))
        .ifPresent(cup -> parts.fact("In the cup", words(cup).words(subject.analyte())));
    CheckWords.of(result).ifPresent(check -> check.tell(parts, number.get(), subject));
    basis(number.get(), subject.analyte()).ifPresent(parts::sentence);
    return parts.section();
  }

  /** What is told first: what was asked for, else what the electrode stood in. */
  static Optional<AmountWords> number(Result result) {
    return result
        .reported()
        .map(
            told ->
                new AmountWords(
                    told.value(), told.uncertainty(), told.unit(), told.basis(), told.relation()))
        .or(() -> result.concentration().map(NumberSection::words));
  }

  private static AmountWords words(Amount amount) {
    return new AmountWords(
        amount.value(), amount.uncertainty(), amount.unit(), amount.basis(), amount.relation());
  }

  private static boolean isTheSame(Amount cup, Optional<Reported> reported) {
    return reported.isEmpty()
        || (cup.value() == reported.get().value() && cup.unit().equals(reported.get().unit()));
  }

  /** What the mass is the mass of, where two ways of counting are in use. */
  private static Optional<String> basis(AmountWords number, Optional<Analyte> analyte) {
    if (number.unit().contains("mol") || analyte.isEmpty() || analyte.get().bases().size() < 2) {
      return Optional.empty();
    }
    String name = analyte.get().name();
    double ratio =
        analyte.get().gramsPerMole(Basis.AS_ION) / analyte.get().gramsPerMole(Basis.AS_N);
    String times = new BigDecimal(ratio).round(new MathContext(3)).toString();
    return Optional.of(
        number.basis().equals(Basis.AS_N.code())
            ? "Counted as the nitrogen (N) in it; counted as whole %s the number is %s times as large"
                .formatted(name, times)
            : "Counted as whole %s; counted as the nitrogen (N) in it, %s-N, the number is %s times smaller"
                .formatted(name, name, times));
  }
}
