package org.restpoint.acquisition.slip;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Optional;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.acquisition.event.Result;

/**
 * What a check showed, for a person. Its fields are looked up by their names: which of them there
 * are depends on its role.
 */
final class CheckWords {

  private final JsonNode check;

  private CheckWords(JsonNode check) {
    this.check = check;
  }

  /** Of a result that is one. */
  static Optional<CheckWords> of(Result result) {
    return result
        .verification()
        .map(verification -> new CheckWords(EventJson.mapper().valueToTree(verification)));
  }

  /** {@code check standard mid}, {@code blank}. */
  String name() {
    return (role() + " " + check.path("standard").asText()).strip();
  }

  /** The figures, under the number that was found. */
  void tell(Parts parts, AmountWords found, Subject subject) {
    if (check.has("expected")) {
      AmountWords expected =
          new AmountWords(check.path("expected").asDouble(), 0, found.unit(), found.basis(), "=");
      parts.fact("Expected", expected.words(subject.analyte()));
    }
    parts
        .fact("Recovery", percent("recoveryPercent", "recoveryUncertaintyPercent"))
        .fact("Apart", percent("relativeDifferencePercent", "relativeDifferenceUncertaintyPercent"))
        .fact("Verdict", check.path("verdict").asText())
        .sentence(check.path("text").asText());
  }

  private String role() {
    return check.path("role").asText().replace('-', ' ');
  }

  private String percent(String value, String uncertainty) {
    return check.has(value)
        ? AmountWords.rounded(check.path(value).asDouble(), check.path(uncertainty).asDouble())
            + AmountWords.NO_BREAK
            + "%"
        : "";
  }
}
