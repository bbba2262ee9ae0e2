package org.restpoint.acquisition.replay;

import java.io.IOException;
import java.nio.charset.MalformedInputException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.restpoint.acquisition.instruction.InstructionException;
import org.restpoint.acquisition.instruction.InstructionReader;

/** Instructions beside a recording: a JSON object a line, each with its time and its probe. */
public final class InstructionFile {

  private InstructionFile() {}

  /**
   * Reads them all, in the order of their times; those of the same time stay in the file's order.
   *
   * @throws InstructionException naming each line that cannot be used
   */
  public static List<TimedInstruction> read(Path file) {
    List<TimedInstruction> all = new ArrayList<>();
    List<String> problems = new ArrayList<>();
    int number = 0;
    for (String line : lines(file)) {
      number++;
      if (!line.isBlank()) {
        try {
          all.add(instruction(line));
        } catch (InstructionException e) {
          problems.add("%s line %d: %s".formatted(file, number, e.getMessage()));
        }
      }
    }
    if (!problems.isEmpty()) {
      throw new InstructionException(String.join("\n", problems));
    }
    all.sort(Comparator.comparing(TimedInstruction::time));
    return all;
  }

  private static TimedInstruction instruction(String line) {
    InstructionReader.Addressed read = InstructionReader.read(line);
    return new TimedInstruction(
        read.time()
            .orElseThrow(
                () ->
                    new InstructionException(
                        "time is missing: expected when it was given, as in the recording"))
            .truncatedTo(ChronoUnit.MILLIS),
        read.probe()
            .orElseThrow(
                () -> new InstructionException("probe is missing: expected the probe it is for")),
        read.instruction());
  }

  private static List<String> lines(Path file) {
    try {
      return Files.readAllLines(file);
    } catch (NoSuchFileException e) {
      throw new InstructionException("%s is not there".formatted(file));
    } catch (MalformedInputException e) {
      throw new InstructionException("%s is not text in UTF-8".formatted(file));
    } catch (IOException e) {
      throw new InstructionException("%s cannot be read: %s".formatted(file, e.getMessage()));
    }
  }
}
