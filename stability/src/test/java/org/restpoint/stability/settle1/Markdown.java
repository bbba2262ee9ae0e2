package org.restpoint.stability.settle1;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** Writes headings, paragraphs and tables. */
final class Markdown {

  private final StringBuilder text = new StringBuilder();

  Markdown heading(String words) {
    text.append("## ").append(words).append("\n\n");
    return this;
  }

  Markdown paragraph(String words) {
    text.append(words).append("\n\n");
    return this;
  }

  /** A table; the first columns are words, the rest figures and stand to the right. */
  Markdown table(int words, List<String> titles, List<List<String>> rows) {
    row(titles);
    List<String> rule = new ArrayList<>(Collections.nCopies(words, "---"));
    rule.addAll(Collections.nCopies(titles.size() - words, "---:"));
    row(rule);
    rows.forEach(this::row);
    text.append('\n');
    return this;
  }

  private void row(List<String> cells) {
    text.append("| ").append(String.join(" | ", cells)).append(" |\n");
  }

  @Override
  public String toString() {
    return text.toString();
  }
}
