package org.restpoint.acquisition.instruction;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

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
   * @param sample the sample's record, where one was given
   */
  public record Measure(Optional<ObjectNode> sample) implements Task {
    @Override
    public String word() {
      return "measure";
    }
  }

  /**
   * Read a standard as if it were a sample, to check the calibration.
   *
   * @param standard the standard's name
   */
  public record Verify(String standard) implements Task {
    @Override
    public String word() {
      return "verify";
    }
  }

  /**
   * Soak the electrode.
   *
   * @param span for how long
   */
  public record Soak(Duration span) implements Task {
    @Override
    public String word() {
      return "soak";
    }
  }

  /** The electrode is rinsed and back in the stream. */
  public record Rinsed() implements Task {
    @Override
    public String word() {
      return "rinsed";
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
