package org.restpoint.acquisition.slip;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.MissingNode;
import java.time.DateTimeException;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.restpoint.acquisition.event.Result;

/** What was measured: the sample's record, or the known solution that was read as a check. */
final class SampleSection {

  /** The fields that are told in words of their own; any other is told by its name. */
  private static final Set<String> TOLD =
      Set.of(
          "number",
          "grower",
          "farm",
          "field",
          "tract",
          "kind",
          "depthTopCentimetres",
          "depthBottomCentimetres",
          "taken",
          "takenBy",
          "latitude",
          "longitude",
          "cooled",
          "keptCelsius",
          "containerRinsed",
          "moisturePercent",
          "recipe",
          "notes");

  private final JsonNode sample;
  private final Subject subject;

  private SampleSection(JsonNode sample, Subject subject) {
    this.sample = sample;
    this.subject = subject;
  }

  static String title(Result result, Subject subject) {
    Optional<String> number =
        result
            .sample()
            .map(record -> record.path("number").asText())
            .filter(text -> !text.isBlank());
    String check =
        CheckWords.of(result).map(CheckWords::name).orElse("reading of " + result.probe());
    String what =
        result.verification().isPresent()
            ? check + number.map(text -> " of sample " + text).orElse("")
            : number.map(text -> "sample " + text).orElse(check);
    return Parts.capitalised(subject.measurand()) + ": " + what;
  }

  static Slip.Section of(Result result, Subject subject) {
    Parts parts = new Parts("What was measured");
    CheckWords.of(result).ifPresent(check -> parts.fact("Check", check.name()));
    JsonNode sample = result.sample().map(JsonNode.class::cast).orElse(MissingNode.getInstance());
    new SampleSection(sample, subject).tell(parts);
    if (result.sample().isEmpty() && result.verification().isEmpty()) {
      parts.sentence("Nothing was noted of a sample");
    }
    return parts.section();
  }

  private void tell(Parts parts) {
    parts
        .fact("Sample", text("number"))
        .fact("Grower", text("grower"))
        .fact("Farm", text("farm"))
        .fact("Field", text("field"))
        .fact("Tract", text("tract"))
        .fact("Kind", text("kind"))
        .fact("Depth", depth())
        .fact("Taken", taken())
        .fact("By", text("takenBy"))
        .fact("Position", position())
        .fact("Kept", kept())
        .fact("Moisture", text("moisturePercent").map(percent -> percent + " % of the dry mass"))
        .fact("Notes", text("notes"));
    sample.properties().stream()
        .filter(field -> !TOLD.contains(field.getKey()))
        .forEach(field -> parts.fact(field.getKey(), plain(field.getValue())));
  }

  private Optional<String> depth() {
    Optional<String> top = text("depthTopCentimetres");
    Optional<String> bottom = text("depthBottomCentimetres");
    if (top.isEmpty() && bottom.isEmpty()) {
      return Optional.empty();
    }
    String from = top.map(centimetres -> "from " + centimetres).orElse("");
    String to = bottom.map(centimetres -> "to " + centimetres).orElse("");
    return Optional.of((from + " " + to).strip() + AmountWords.NO_BREAK + "cm");
  }

  private Optional<String> taken() {
    return text("taken")
        .map(
            text -> {
              try {
                return subject.time(OffsetDateTime.parse(text).toInstant());
              } catch (DateTimeException e) {
                return text;
              }
            });
  }

  private Optional<String> position() {
    Optional<String> latitude = text("latitude");
    Optional<String> longitude = text("longitude");
    return latitude.isPresent() && longitude.isPresent()
        ? Optional.of("latitude %s, longitude %s".formatted(latitude.get(), longitude.get()))
        : Optional.empty();
  }

  private Optional<String> kept() {
    List<String> how = new ArrayList<>();
    if (sample.has("cooled")) {
      how.add(sample.path("cooled").asBoolean() ? "cooled" : "not cooled");
    }
    text("keptCelsius")
        .ifPresent(celsius -> how.add("at " + celsius + AmountWords.NO_BREAK + "°C"));
    if (sample.has("containerRinsed")) {
      how.add(
          sample.path("containerRinsed").asBoolean() ? "container rinsed" : "container not rinsed");
    }
    return how.isEmpty() ? Optional.empty() : Optional.of(String.join(", ", how));
  }

  private Optional<String> text(String field) {
    return Optional.of(plain(sample.path(field))).filter(text -> !text.isBlank());
  }

  private static String plain(JsonNode value) {
    return value.isNull() ? "" : value.isContainerNode() ? value.toString() : value.asText();
  }
}
