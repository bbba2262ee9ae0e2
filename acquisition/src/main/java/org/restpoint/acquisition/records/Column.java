package org.restpoint.acquisition.records;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.restpoint.acquisition.sample.SampleField;

/**
 * A column of a table: a field of the JSON, and the name over it.
 *
 * @param name the column's name
 * @param pointer where the value stands, a JSON pointer (RFC 6901)
 */
record Column(String name, String pointer) {

  private static final List<Column> RESULT =
      List.of(
          at("id"),
          at("revision"),
          at("station"),
          at("probe"),
          at("time"),
          at("outcome"),
          new Column("value", "/reported/value"),
          new Column("unit", "/reported/unit"),
          new Column("basis", "/reported/basis"),
          new Column("uncertainty", "/reported/uncertainty"),
          new Column("coverage", "/reported/coverage"),
          new Column("relation", "/reported/relation"),
          new Column("kind", "/reported/kind"),
          at("quality"),
          at("flags"),
          new Column("sampleNumber", "/sample/number"),
          told("grower"),
          told("farm"),
          told("field"),
          told("tract"),
          new Column("sampleKind", "/sample/kind"),
          told("depthTopCentimetres"),
          told("depthBottomCentimetres"),
          told("taken"),
          told("latitude"),
          told("longitude"),
          at("sample"),
          new Column("recipe", "/preparation/recipe"),
          at("millivolts"),
          at("millivoltsUncertainty"),
          at("celsius"),
          at("readings"),
          at("elapsedSeconds"),
          at("rule"),
          at("forecast"),
          at("responseReadings"),
          new Column("calibration", "/calibration/id"),
          new Column("slopePercent", "/calibration/slopePercent"),
          new Column("recoveryPercent", "/verification/recoveryPercent"),
          at("reasons"),
          at("caution"));

  private static final List<Column> CALIBRATION =
      List.of(
          at("id"),
          at("revision"),
          at("station"),
          at("probe"),
          at("time"),
          at("verdict"),
          at("slopeFrom"),
          at("slopeMillivoltsPerDecade"),
          at("slopePercent"),
          at("offsetMillivolts"),
          at("slopeStandardError"),
          at("residualMillivolts"),
          at("referenceCelsius"),
          new Column("standards", "/points"),
          at("flags"),
          at("reasons"));

  private static final List<Column> NOTICE =
      List.of(
          at("id"), at("station"), at("probe"), at("time"), at("code"), at("text"), at("remedy"));

  private static final List<Column> SAMPLE =
      Stream.of(
              Stream.of(at("id"), at("revision"), at("station"), at("probe"), at("time")),
              SampleField.keys().stream().map(Column::told),
              Stream.of(at("changed")))
          .flatMap(columns -> columns)
          .toList();
  private static final List<Column> BATCH =
      List.of(
          at("id"), at("station"), at("probe"), at("begun"), at("time"), at("cups"), at("left"));

  private static final List<Column> INSTRUCTION =
      List.of(
          at("time"),
          at("probe"),
          at("id"),
          at("do"),
          at("standard"),
          at("sample"),
          at("minutes"),
          at("days"),
          at("into"),
          at("part"),
          at("recipe"));

  private static Column at(String field) {
    return new Column(field, "/" + field);
  }

  /** A field of the sample's record. */
  private static Column told(String field) {
    return new Column(field, "/sample/" + field);
  }

  /** The columns of a kind of record. */
  static List<Column> of(String kind) {
    return switch (kind) {
      case "result" -> RESULT;
      case "calibration" -> CALIBRATION;
      case "notice" -> NOTICE;
      case "sample" -> SAMPLE;
      case "batch" -> BATCH;
      case "instruction" -> INSTRUCTION;
      default -> throw new IllegalArgumentException("there are no records of kind " + kind);
    };
  }

  /** The cell of a row: text as it is, lists joined by spaces, what is absent empty. */
  String cell(JsonNode row) {
    return text(row.at(pointer));
  }

  /** A value in one cell. */
  static String text(JsonNode value) {
    if (value.isArray()) {
      List<String> parts = new ArrayList<>();
      value.forEach(part -> parts.add(word(part)));
      return String.join(" ", parts);
    }
    return value.isMissingNode() || value.isNull() ? "" : plain(value);
  }

  /**
   * Of a reason its code, of a standard its name, of a change the field, of a cup its name and what
   * came of it.
   */
  private static String word(JsonNode part) {
    if (part.has("cup")) {
      return part.get("cup").asText() + ":" + part.path("outcome").asText();
    }
    if (part.has("code")) {
      return part.get("code").asText();
    }
    if (part.has("field")) {
      return part.get("field").asText();
    }
    return part.has("standard") ? part.get("standard").asText() : plain(part);
  }

  private static String plain(JsonNode value) {
    return value.isValueNode() ? value.asText() : value.toString();
  }
}
