package org.restpoint.acquisition.schema;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.databind.JsonNode;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.FieldSource;
import org.restpoint.acquisition.event.Answer;
import org.restpoint.acquisition.event.BatchSummary;
import org.restpoint.acquisition.event.Calibration;
import org.restpoint.acquisition.event.Event;
import org.restpoint.acquisition.event.Notice;
import org.restpoint.acquisition.event.Preparation;
import org.restpoint.acquisition.event.Progress;
import org.restpoint.acquisition.event.RawReading;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.event.SampleRecord;
import org.restpoint.acquisition.event.State;
import org.restpoint.stability.calibration.Reason;
import org.restpoint.stability.uncertainty.BudgetLine;

class RecordShapeTest {

  private static final Set<Class<?>> OPTIONAL =
      Set.of(Optional.class, OptionalDouble.class, OptionalLong.class);

  static final List<Shape> SHAPES =
      List.of(
          new Shape(RawReading.class, "raw.json", ""),
          new Shape(Progress.class, "settling.json", ""),
          new Shape(Progress.Member.class, "settling.json", "/$defs/member"),
          new Shape(Result.class, "result.json", ""),
          new Shape(Result.CalibrationUsed.class, "result.json", "/$defs/calibrationUsed"),
          new Shape(Result.Amount.class, "result.json", "/$defs/amount"),
          new Shape(Result.Reported.class, "result.json", "/$defs/reported"),
          new Shape(Result.Verification.class, "result.json", "/$defs/verification"),
          new Shape(BudgetLine.class, "result.json", "/$defs/budgetLine"),
          new Shape(Result.Interference.class, "result.json", "/$defs/interference"),
          new Shape(Preparation.class, "result.json", "/$defs/preparation"),
          new Shape(
              Preparation.Figure.class,
              "result.json",
              "/$defs/preparation/properties/figures/items"),
          new Shape(Calibration.Limit.class, "calibration.json", "/$defs/limit"),
          new Shape(Calibration.class, "calibration.json", ""),
          new Shape(Calibration.Point.class, "calibration.json", "/$defs/point"),
          new Shape(SampleRecord.class, "sample.json", ""),
          new Shape(SampleRecord.Change.class, "sample.json", "/$defs/change"),
          new Shape(State.class, "state.json", ""),
          new Shape(Notice.class, "notice.json", ""),
          new Shape(BatchSummary.class, "batch.json", ""),
          new Shape(BatchSummary.Cup.class, "batch.json", "/$defs/cup"),
          new Shape(Answer.class, "answer.json", ""),
          new Shape(Reason.class, "terms.json", "/$defs/reason"));

  record Shape(Class<? extends Record> type, String file, String pointer) {}

  @ParameterizedTest
  @FieldSource("SHAPES")
  void aSchemaNamesTheComponentsOfItsRecordAndRequiresThoseThatAreAlwaysThere(Shape shape) {
    Set<String> names = new TreeSet<>();
    Set<String> always = new TreeSet<>();
    if (Event.class.isAssignableFrom(shape.type())) {
      names.add("event");
      always.add("event");
    }
    for (RecordComponent component : shape.type().getRecordComponents()) {
      String name = name(component);
      names.add(name);
      if (!OPTIONAL.contains(component.getType())) {
        always.add(name);
      }
    }
    JsonNode schema = Schemas.schema(shape.file()).at(shape.pointer());
    Set<String> described = new TreeSet<>();
    schema.path("properties").fieldNames().forEachRemaining(described::add);
    Set<String> required = new TreeSet<>();
    schema.path("required").forEach(field -> required.add(field.asText()));

    assertThat(described).isEqualTo(names);
    assertThat(required).isEqualTo(always);
    assertThat(schema.path("additionalProperties").asText()).isEqualTo("false");
  }

  private static String name(RecordComponent component) {
    JsonProperty renamed = component.getAccessor().getAnnotation(JsonProperty.class);
    return renamed == null ? component.getName() : renamed.value();
  }

  @Test
  void everyFieldIsDescribed() {
    for (String payload : Schemas.PAYLOADS) {
      fields(Schemas.schema(payload + ".json"))
          .forEach(
              field ->
                  assertThat(field.getValue().path("description").asText())
                      .as("%s in %s", field.getKey(), payload)
                      .endsWith("."));
    }
  }

  @ParameterizedTest
  @CsvSource({
    "illivolts$, in mV",
    "MillivoltsPerDecade$, in mV per decade",
    "MillivoltsPerMinute$, in mV/min",
    "millivoltsUncertainty, in mV",
    "slopeStandardError, in mV per decade",
    "elsius$, °C",
    "Seconds$, in s",
    "Percent$, in %",
    "^minutes$, in min",
    "^value$, in `unit`",
    "^uncertainty$, in `unit`"
  })
  void aQuantityIsDescribedWithItsUnit(String name, String unit) {
    List<String> descriptions = new ArrayList<>();
    for (String payload : Schemas.PAYLOADS) {
      fields(Schemas.schema(payload + ".json")).stream()
          .filter(field -> field.getKey().matches(".*(" + name + ").*"))
          .forEach(field -> descriptions.add(field.getValue().path("description").asText()));
    }
    assertThat(descriptions).isNotEmpty().allSatisfy(text -> assertThat(text).contains(unit));
  }

  /** The fields of an object's schema and of the objects it defines. */
  private static List<Map.Entry<String, JsonNode>> fields(JsonNode schema) {
    List<Map.Entry<String, JsonNode>> fields = new ArrayList<>();
    fields.addAll(schema.path("properties").properties());
    schema.path("$defs").forEach(part -> fields.addAll(part.path("properties").properties()));
    return fields;
  }
}
