package org.restpoint.acquisition.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import picocli.CommandLine;

/** What a command said, and how it ended. */
record Said(int exitStatus, String out, String err) {

  /** Runs a command of these words. */
  static Said run(Object... arguments) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    CommandLine line =
        Commands.line().setOut(new PrintWriter(out, true)).setErr(new PrintWriter(err, true));
    String[] words = new String[arguments.length];
    for (int i = 0; i < words.length; i++) {
      words[i] = arguments[i].toString();
    }
    return new Said(line.execute(words), out.toString(), err.toString());
  }

  /** It said this on standard error and nothing else. */
  void isRefusal(int exitStatus, String text) {
    assertThat(this).isEqualTo(new Said(exitStatus, "", "restpoint: " + text + "\n"));
  }

  /** It was wrong usage: what is wrong, and then how it is used. */
  void isUsage(String firstLine, String usage) {
    assertThat(exitStatus).isEqualTo(2);
    assertThat(out).isEmpty();
    assertThat(err.lines().limit(2)).containsExactly(firstLine, usage);
    assertThat(err).doesNotContain("\tat ").doesNotContain("Exception");
  }
}
