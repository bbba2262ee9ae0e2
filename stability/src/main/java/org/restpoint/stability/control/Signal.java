package org.restpoint.stability.control;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * A pattern that was seen.
 *
 * @param rule which
 * @param values the values it was seen in, oldest first
 * @param text what was seen, with the figures
 */
public record Signal(RunRule rule, List<Double> values, String text) {

  public Signal {
    values = List.copyOf(values);
  }

  static Signal seen(RunRule rule, List<Double> values, ControlLimits limits) {
    String figures =
        values.stream()
            .map(value -> String.format(Locale.ROOT, "%.4g", value))
            .collect(Collectors.joining(", "));
    return new Signal(
        rule,
        values,
        String.format(
            Locale.ROOT,
            "%s: %s (mean %.4g, σ %.3g)",
            rule.words(),
            figures,
            limits.mean(),
            limits.sigma()));
  }
}
