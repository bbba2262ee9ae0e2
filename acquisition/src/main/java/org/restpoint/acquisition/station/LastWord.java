package org.restpoint.acquisition.station;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.restpoint.acquisition.event.Answer;
import org.restpoint.acquisition.instruction.Instruction;

/**
 * The last word of a batch with the answers to it: a rig that has missed an answer sends its word
 * again with the same id and hears what it missed, and nothing is done twice. Not kept over a
 * restart.
 */
final class LastWord {

  private Optional<String> id = Optional.empty();
  private final List<Answer> answers = new ArrayList<>();

  /** A new word. */
  void is(Instruction instruction) {
    id = instruction.id();
    answers.clear();
  }

  /** What was answered may not be said again. */
  void forget() {
    answers.clear();
    id = Optional.empty();
  }

  /** Keeps an answer to it; one to another is passed over. */
  void heard(Answer answer) {
    if (id.isPresent() && id.equals(answer.id())) {
      answers.add(answer);
    }
  }

  /** The answers to it so far, where this is the same again; otherwise none. */
  List<Answer> answersTo(Instruction instruction) {
    return id.isPresent() && id.equals(instruction.id()) ? List.copyOf(answers) : List.of();
  }
}
