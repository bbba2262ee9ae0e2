package org.restpoint.acquisition.service;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Set;
import org.restpoint.acquisition.instruction.Instruction;
import org.restpoint.adapters.link.LinkTrouble;

/** Takes out of what is written everything that would tell of a private sample. */
final class Confidence {

  /** Troubles that quote what came over the wire, or may. */
  private static final Set<String> QUOTING =
      Set.of(
          "line-rejected",
          "line-too-long",
          "message-rejected",
          "message-duplicate",
          "message-unclaimed",
          "answer-rejected",
          "checksum-wrong",
          "channel-unclaimed",
          "unasked-bytes",
          "lines-skipped");

  /** What is left of an instruction to read a private sample. */
  private static final List<String> KEPT = List.of("id", "time", "probe", "do", "private");

  private Confidence() {}

  /** A trouble without what came over the wire. */
  static LinkTrouble unquoted(LinkTrouble trouble) {
    return QUOTING.contains(trouble.code())
        ? new LinkTrouble(
            trouble.code(),
            "what came is no reading; it is not quoted while a private sample is read",
            trouble.remedy())
        : trouble;
  }

  /** An instruction as it may be stored. */
  static ObjectNode storable(Instruction instruction, ObjectNode given) {
    boolean confidential =
        instruction.task() instanceof Instruction.Measure measure && measure.confidential();
    return confidential ? given.deepCopy().retain(KEPT) : given;
  }
}
