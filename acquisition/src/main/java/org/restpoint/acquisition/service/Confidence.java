package org.restpoint.acquisition.service;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import org.restpoint.acquisition.forgetting.Quoting;
import org.restpoint.acquisition.instruction.Instruction;
import org.restpoint.adapters.link.LinkTrouble;

/** Takes out of what is written everything that would tell of a private sample. */
final class Confidence {

  /** What is left of an instruction to read a private sample. */
  private static final List<String> KEPT = List.of("id", "time", "probe", "do", "private");

  /** What is left of an instruction to forget a sample. */
  private static final List<String> FORGETTING = List.of("id", "time", "probe", "do");

  private Confidence() {}

  /** A trouble without what came over the wire. */
  static LinkTrouble unquoted(LinkTrouble trouble) {
    return Quoting.CODES.contains(trouble.code())
        ? new LinkTrouble(
            trouble.code(),
            "what came is no reading; it is not quoted while a private sample is read",
            trouble.remedy())
        : trouble;
  }

  /**
   * Whether an instruction that cannot be read may be one of a private sample, or to forget one:
   * the words that tell what is wrong with it quote it.
   */
  static boolean mayBeOwed(String unreadable) {
    return unreadable.contains("private") || unreadable.contains("forget");
  }

  /** An instruction as it may be stored. */
  static ObjectNode storable(Instruction instruction, ObjectNode given) {
    if (instruction.task() instanceof Instruction.Forget) {
      return given.deepCopy().retain(FORGETTING);
    }
    boolean confidential =
        instruction.task() instanceof Instruction.Measure measure && measure.confidential();
    return confidential ? given.deepCopy().retain(KEPT) : given;
  }
}
