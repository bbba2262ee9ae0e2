package org.restpoint.acquisition.instruction;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.restpoint.acquisition.event.CheckRole;

/**
 * An instruction to one probe.
 *
 * @param id the caller's own id; its answers carry it
 * @param task what to do
 */
public record Instruction(Optional<String> id, Task task) {

  /** What to do. */
  public sealed interface Task {

    /** The word that asks for it. */
    String word();
  }

  /**
   * Read a standard and calibrate with it.
   *
   * @param standard the standard's name
   */
  public record Calibrate(String standard) implements Task {
    @Override
    public String word() {
      return "calibrate";
    }
  }

  /**
   * Read a sample.
   *
   * @param sample what is told of the sample, its number at least, where anything is
   * @param recipe how it was prepared, where it was named
   * @param confidential whether nobody but the caller hears of it, and nothing of it is kept
   */
  public record Measure(Optional<ObjectNode> sample, Optional<String> recipe, boolean confidential)
      implements Task {
    @Override
    public String word() {
      return "measure";
    }
  }

  /**
   * Keep or correct the record of a sample.
   *
   * @param told its number and the fields to be kept; one that is an empty text is removed
   */
  public record KeepSample(ObjectNode told) implements Task {
    @Override
    public String word() {
      return "sample";
    }
  }

  /**
   * Read what checks other results.
   *
   * @param role what it is
   * @param standard the standard's name; of a check standard alone, empty for the one that the
   *     station file names
   * @param sample the sample's number; of a duplicate and a spike alone
   */
  public record Verify(CheckRole role, Optional<String> standard, Optional<String> sample)
      implements Task {

    /** Checks that there is what the role needs, and nothing else. */
    public Verify {
      if ((standard.isPresent() && role != CheckRole.CHECK_STANDARD)
          || sample.isPresent() != role.isOfSample()) {
        throw new IllegalArgumentException(
            "a check standard alone has a standard, a duplicate and a spike have a sample");
      }
    }

    @Override
    public String word() {
      return "verify";
    }
  }

  /**
   * Soak the electrode.
   *
   * @param span for how long; empty for as long as the electrode usually does
   */
  public record Soak(Optional<Duration> span) implements Task {
    @Override
    public String word() {
      return "soak";
    }
  }

  /**
   * The electrode is rinsed and blotted; a stream's is back in its stream.
   *
   * @param into the standard it was put into at once, where it was
   */
  public record Rinsed(Optional<String> into) implements Task {
    @Override
    public String word() {
      return "rinsed";
    }
  }

  /**
   * Put the electrode into storage.
   *
   * @param span how long it will rest, where that is known
   */
  public record Store(Optional<Duration> span) implements Task {
    @Override
    public String word() {
      return "store";
    }
  }

  /**
   * Another electrode or membrane than before: nothing known of the last one holds for it.
   *
   * @param part what was exchanged
   */
  public record Replaced(Part part) implements Task {
    @Override
    public String word() {
      return "replaced";
    }
  }

  /** What can be exchanged. */
  public enum Part {
    /** The membrane or the module that carries it. */
    MEMBRANE,
    /** The whole electrode. */
    ELECTRODE;

    /** The word that stands for it. */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /**
   * Accept the refused standard as it is.
   *
   * @param because why, in the operator's words
   */
  public record AcceptStandard(Optional<String> because) implements Task {
    @Override
    public String word() {
      return "accept-standard";
    }
  }

  /**
   * Take all that is kept of a sample out for good.
   *
   * @param sample its number; empty as it is stored, where nothing is done any more
   */
  public record Forget(Optional<String> sample) implements Task {
    @Override
    public String word() {
      return "forget";
    }
  }

  /** What a person or a rig says while it goes through a list of cups. */
  public sealed interface OfBatch extends Task {}

  /**
   * A list of cups to go through.
   *
   * @param cups the cups, in order, each with a name of its own
   */
  public record Batch(List<Cup> cups) implements OfBatch {
    public Batch {
      cups = List.copyOf(cups);
    }

    @Override
    public String word() {
      return "batch";
    }
  }

  /**
   * Ready to move to the next cup.
   *
   * @param skip whether to go on although the present cup has not been read
   */
  public record Next(boolean skip) implements OfBatch {
    @Override
    public String word() {
      return "next";
    }
  }

  /**
   * The electrode is in the cup: read it.
   *
   * @param cup the cup's name, to be sure that both mean the same
   */
  public record InPlace(Optional<String> cup) implements OfBatch {
    @Override
    public String word() {
      return "in-place";
    }
  }

  /** The batch is over. */
  public record Done() implements OfBatch {
    @Override
    public String word() {
      return "done";
    }
  }

  /** Give up what is going on. */
  public record Cancel() implements Task {
    @Override
    public String word() {
      return "cancel";
    }
  }
}
