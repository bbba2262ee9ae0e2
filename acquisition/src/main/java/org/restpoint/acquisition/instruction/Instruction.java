package org.restpoint.acquisition.instruction;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Duration;
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

  /** Give up what is going on. */
  public record Cancel() implements Task {
    @Override
    public String word() {
      return "cancel";
    }
  }
}
