package org.restpoint.adapters.mqtt;

import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import org.restpoint.adapters.text.Excerpt;

/**
 * A SenML pack in its JSON form (RFC 8428, application/senml+json), whose base fields are applied
 * record by record. A pack of a later version than 10, and one with a field that must be understood
 * (its label ends in {@code _}), is rejected, as the RFC asks. The CBOR, XML and EXI forms are not
 * read, nor are sums.
 */
final class SenMlPack {

  /** RFC 8428, section 4.4. */
  private static final int VERSION = 10;

  private static final List<String> VALUES = List.of("v", "vs", "vb", "vd");

  private String baseName = "";
  private Optional<String> baseUnit = Optional.empty();
  private BigDecimal baseTime = BigDecimal.ZERO;
  private BigDecimal baseValue = BigDecimal.ZERO;
  private int number;

  private SenMlPack() {}

  /**
   * The records in their order; those that hold nothing but base fields are applied and left out.
   */
  static List<SenMlRecord> resolve(byte[] payload) throws RejectedMessageException {
    JsonNode pack = StrictJson.parse(payload);
    if (!pack.isArray()) {
      throw new RejectedMessageException(
          "expected a SenML pack, which is an array of records, found " + StrictJson.kind(pack));
    }
    SenMlPack state = new SenMlPack();
    List<SenMlRecord> records = new ArrayList<>();
    for (JsonNode node : pack) {
      state.record(node).ifPresent(records::add);
    }
    return records;
  }

  private Optional<SenMlRecord> record(JsonNode node) throws RejectedMessageException {
    number++;
    if (!node.isObject()) {
      throw rejected("expected an object, found " + StrictJson.kind(node));
    }
    requireUnderstood(node);
    baseName = text(node, "bn").orElse(baseName);
    baseUnit = text(node, "bu").or(() -> baseUnit);
    baseTime = number(node, "bt").orElse(baseTime);
    baseValue = number(node, "bv").orElse(baseValue);
    Optional<String> name = text(node, "n");
    Optional<String> unit = text(node, "u");
    Optional<BigDecimal> time = number(node, "t");
    List<String> values = VALUES.stream().filter(node::has).toList();
    if (name.isEmpty() && unit.isEmpty() && time.isEmpty() && values.isEmpty() && !node.has("s")) {
      return Optional.empty();
    }
    if (values.size() > 1) {
      throw rejected("it has two values, %s and %s".formatted(values.get(0), values.get(1)));
    }
    String full = baseName + name.orElse("");
    if (full.isEmpty()) {
      throw rejected("it has no name");
    }
    return Optional.of(
        new SenMlRecord(
            full,
            unit.or(() -> baseUnit),
            number(node, "v").map(baseValue::add),
            values.stream().findFirst(),
            baseTime.add(time.orElse(BigDecimal.ZERO))));
  }

  private void requireUnderstood(JsonNode node) throws RejectedMessageException {
    Optional<BigDecimal> version = number(node, "bver");
    if (version.isPresent() && version.get().compareTo(BigDecimal.valueOf(VERSION)) > 0) {
      throw rejected(
          "it is of SenML version %s, and %d is the latest that is understood"
              .formatted(Excerpt.of(version.get().toString()), VERSION));
    }
    for (Iterator<String> labels = node.fieldNames(); labels.hasNext(); ) {
      String label = labels.next();
      if (label.endsWith("_")) {
        throw rejected("it has the field %s, which is not understood".formatted(Excerpt.of(label)));
      }
    }
  }

  private Optional<String> text(JsonNode node, String label) throws RejectedMessageException {
    JsonNode field = node.path(label);
    if (field.isMissingNode()) {
      return Optional.empty();
    }
    if (!field.isTextual()) {
      throw rejected("expected a text as %s, found %s".formatted(label, StrictJson.kind(field)));
    }
    return Optional.of(field.textValue());
  }

  private Optional<BigDecimal> number(JsonNode node, String label) throws RejectedMessageException {
    JsonNode field = node.path(label);
    if (field.isMissingNode()) {
      return Optional.empty();
    }
    if (!field.isNumber()) {
      throw rejected("expected a number as %s, found %s".formatted(label, StrictJson.kind(field)));
    }
    return Optional.of(ExactNumber.of(field, "record %d: its %s".formatted(number, label)));
  }

  private RejectedMessageException rejected(String why) {
    return new RejectedMessageException("record %d: %s".formatted(number, why));
  }
}
