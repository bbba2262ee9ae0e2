package org.restpoint.acquisition.forgetting;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.restpoint.acquisition.event.EventJson;
import org.restpoint.acquisition.instruction.Cup;
import org.restpoint.adapters.journal.Journal;
import org.restpoint.adapters.journal.SpanQuery;
import org.restpoint.adapters.journal.StoredInstruction;

/**
 * What a station was told, as to one sample: which instructions name it, how they read without it,
 * and when each electrode was told to stand elsewhere.
 */
final class ToldInstructions {

  /** Words on which an electrode stays where it is. */
  private static final Set<String> STAYS =
      Set.of("cancel", "sample", "accept-standard", "forget", "batch", "next", "done");

  private static final List<String> KEPT = List.of("time", "probe", "id");

  private final String number;
  private final List<StoredInstruction> rewritten = new ArrayList<>();
  private final List<Told> readings = new ArrayList<>();
  private final List<Told> moves = new ArrayList<>();
  private final Set<String> emptiedCups = new HashSet<>();

  /** The cups of the sample in the list that each probe goes through. */
  private final Map<String, Set<String>> cups = new HashMap<>();

  /** What a probe was told, and when. */
  record Told(String probe, Instant time) {}

  private ToldInstructions(String number) {
    this.number = number;
  }

  static ToldInstructions of(Journal journal, Naming naming, String number) {
    ToldInstructions told = new ToldInstructions(number);
    List<StoredInstruction> inPlace = new ArrayList<>();
    journal.instructions(
        SpanQuery.all(),
        instruction -> {
          JsonNode node = Json.read(instruction.json());
          told.note(instruction, node, naming);
          if (node.path("do").asText().equals("in-place") && node.has("cup")) {
            inPlace.add(instruction);
          }
        });
    inPlace.forEach(told::rename);
    return told;
  }

  private void note(StoredInstruction instruction, JsonNode node, Naming naming) {
    String word = node.path("do").asText();
    if (naming.mayBeIn(instruction.json()) && node instanceof ObjectNode fields) {
      if (word.equals("batch")) {
        emptied(instruction, fields);
      } else if (Cup.isOf(fields, number)) {
        ObjectNode nothing = fields.deepCopy().retain(KEPT).put("do", "forget");
        rewritten.add(with(instruction, nothing));
        if (!word.equals("sample")) {
          readings.add(new Told(instruction.probe(), instruction.time()));
        }
        return;
      }
    }
    if (word.equals("batch")) {
      cups.put(instruction.probe(), ofSample(node));
    } else if (word.equals("in-place") && isOfSample(instruction.probe(), node)) {
      readings.add(new Told(instruction.probe(), instruction.time()));
    }
    if (!STAYS.contains(word)) {
      moves.add(new Told(instruction.probe(), instruction.time()));
    }
  }

  private Set<String> ofSample(JsonNode list) {
    Set<String> names = new HashSet<>();
    for (JsonNode line : list.path("cups")) {
      if (line instanceof ObjectNode cup && Cup.isOf(cup, number)) {
        names.add(cup.path("cup").asText());
      }
    }
    return names;
  }

  private boolean isOfSample(String probe, JsonNode inPlace) {
    return cups.getOrDefault(probe, Set.of()).contains(inPlace.path("cup").asText());
  }

  private void emptied(StoredInstruction instruction, ObjectNode fields) {
    ObjectNode copy = fields.deepCopy();
    if (copy.path("cups") instanceof ArrayNode cups) {
      for (int place = 0; place < cups.size(); place++) {
        if (cups.get(place) instanceof ObjectNode line && Cup.isOf(line, number)) {
          ObjectNode rinse = Cup.emptied(line, number, place);
          if (!rinse.path("cup").equals(line.path("cup"))) {
            emptiedCups.add(line.path("cup").asText());
          }
          cups.set(place, rinse);
        }
      }
    }
    if (!copy.equals(fields)) {
      rewritten.add(with(instruction, copy));
    }
  }

  /** A cup whose name told the sample is not named any more. */
  private void rename(StoredInstruction instruction) {
    ObjectNode fields = (ObjectNode) Json.read(instruction.json());
    if (emptiedCups.contains(fields.path("cup").asText())) {
      fields.remove("cup");
      rewritten.add(with(instruction, fields));
    }
  }

  private static StoredInstruction with(StoredInstruction instruction, ObjectNode fields) {
    return new StoredInstruction(
        instruction.id(), instruction.probe(), instruction.time(), EventJson.write(fields));
  }

  /** The instructions that name the sample, as they read without it. */
  List<StoredInstruction> rewritten() {
    return List.copyOf(rewritten);
  }

  /** When probes were told to read it. */
  List<Told> readings() {
    return List.copyOf(readings);
  }

  /** When a probe's electrode was told next, after an instant, to stand elsewhere. */
  Optional<Instant> movedAfter(String probe, Instant time) {
    return moves.stream()
        .filter(told -> told.probe().equals(probe) && told.time().isAfter(time))
        .map(Told::time)
        .min(Instant::compareTo);
  }
}
