package org.restpoint.acquisition.probe;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.MissingNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Optional;
import org.restpoint.acquisition.event.Preparation;
import org.restpoint.acquisition.event.Result;
import org.restpoint.acquisition.sample.SampleLabel;

/**
 * Says what a published result is with another record of its sample: how it was kept is judged
 * anew, and where the record says otherwise how it was prepared, the number is reckoned back anew.
 */
public final class Retelling {

  /** The fields of a record that the number follows from. */
  private static final List<String> OF_THE_NUMBER = List.of("recipe", "moisturePercent");

  private final String analyte;
  private final Preparations preparations;

  /** For the results of one probe. */
  public Retelling(ProbeSettings settings, Archive archive) {
    this.analyte = settings.analyte().name();
    this.preparations = new Preparations(settings, archive);
  }

  /** The result with this record. */
  public Result of(Result published, ObjectNode record) {
    Result labelled = SampleLabel.on(published, record, Optional.of(analyte));
    boolean sameNumber =
        OF_THE_NUMBER.stream()
            .allMatch(field -> field(published.sample(), field).equals(record.path(field)));
    if (published.concentration().isEmpty() || published.verification().isPresent() || sameNumber) {
      return labelled;
    }
    return preparations.anew(
        labelled, asked(published), Optional.of(record), published.concentration().get());
  }

  /** The recipe that the instruction named: one that the record then did not name. */
  static Optional<String> asked(Result published) {
    return published
        .preparation()
        .map(Preparation::recipe)
        .filter(name -> !name.equals(field(published.sample(), "recipe").asText("")));
  }

  private static JsonNode field(Optional<ObjectNode> record, String name) {
    return record.<JsonNode>map(fields -> fields.path(name)).orElseGet(MissingNode::getInstance);
  }
}
