package org.restpoint.stability.settle1;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;

/** Runs the benchmark: tables to standard output, pictures to the folder named as argument. */
public final class Settle1Benchmark {

  private Settle1Benchmark() {}

  /** The same tables and pictures on any machine, however many processors it has. */
  public static void main(String[] arguments) throws IOException {
    Sets sets = Sets.draw(Settle1.TUNING_SEED, Settle1.REPORT_SEEDS, Settle1.CURVES);
    Run run = Run.of(sets, Candidates.fixed(), Candidates.all());
    PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    out.print(new Report(run).markdown());
    out.print(LearningTable.markdown());
    new Pictures(run).write(Path.of(arguments[0]));
  }
}
