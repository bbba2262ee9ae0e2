package org.restpoint.acquisition.demo;

import java.nio.file.Path;
import java.util.List;
import org.restpoint.acquisition.event.Result;

/**
 * The end of the account: what was found beside what was really there, whether it came out as told,
 * and how to look further.
 *
 * @param account the account
 * @param program how this program is called
 * @param station the station file
 */
record Closing(Account account, String program, Path station) {

  private static final String ROW = "%-22s %-14s %7s  %-9s %s";

  void tell(List<Finding> findings) {
    account.heading("WHAT WAS FOUND, in mg/L of nitrate as N in the solution that was read");
    account.line(ROW.formatted("what", "found", "really", "outcome", "flags"));
    for (Finding finding : findings) {
      account.line(
          ROW.formatted(
                  finding.what(),
                  finding.found(),
                  Sentences.number("%.1f", finding.really()),
                  Sentences.word(finding.result().outcome()),
                  finding.flags())
              .stripTrailing());
    }
    account.say(
        "\u00b1 is the expanded uncertainty (k = 2). \"Really\" is what the simulation put into the"
            + " beaker; the service was never told.");
    account.line("");
    account.say(Result.CAUTION);
  }

  /** Says whether everything came out as told. */
  boolean judge(List<String> surprises) {
    if (!surprises.isEmpty()) {
      account.heading("THE DEMO FAILED: it did not come out as its story says.");
      surprises.forEach(surprise -> account.say("- " + surprise));
      return false;
    }
    account.heading("LOOK FURTHER: every reading, instruction and result is in the journal");
    String records = program + " records " + quoted(station);
    String readings = quoted(station.resolveSibling("readings.csv"));
    String instructions = quoted(station.resolveSibling("instructions.jsonl"));
    command(records);
    command(records, "--of calibrations");
    account.line("and the same results to the last digit, worked out anew from raw millivolts:");
    command(records, "--of readings > " + readings);
    command(records, "--of instructions > " + instructions);
    command(program + " replay " + quoted(station), readings + " --instructions " + instructions);
    return true;
  }

  private void command(String begin) {
    account.line("  " + begin);
  }

  /** A command to copy that would be too long for one line. */
  private void command(String begin, String end) {
    account.line("  " + begin + " \\");
    account.line("      " + end);
  }

  private static String quoted(Path path) {
    return Shell.quoted(path.toString());
  }
}
