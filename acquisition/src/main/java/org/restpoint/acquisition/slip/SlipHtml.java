package org.restpoint.acquisition.slip;

import java.util.List;
import org.restpoint.acquisition.slip.Slip.Fact;
import org.restpoint.acquisition.slip.Slip.Headline;
import org.restpoint.acquisition.slip.Slip.Part;
import org.restpoint.acquisition.slip.Slip.Sentence;

/**
 * A slip as one page of HTML that is XML as well: without a script, without anything from
 * elsewhere, for a sheet of A4 or Letter or a roll of 80 mm. All text is escaped.
 */
public final class SlipHtml {

  /** The paper is the printer's: two columns where it is wide enough, a small type on a roll. */
  private static final String STYLE =
      """
      body { font: 11pt/1.35 sans-serif; color: #000; background: #fff; max-width: 17cm; margin: 1em auto; padding: 0 1em; overflow-wrap: anywhere; }
      h1 { font-size: 1.3em; border-bottom: 2px solid; margin: 0 0 .4em; }
      h2 { font-size: 1em; border-bottom: 1px solid; margin: .9em 0 .2em; }
      p { margin: .25em 0; }
      p.number { font-size: 1.5em; font-weight: bold; }
      table { border-collapse: collapse; }
      th { text-align: left; font-weight: normal; vertical-align: top; padding: 0 1em 0 0; white-space: nowrap; min-width: 5em; }
      td { vertical-align: top; padding: 0; }
      section { break-inside: avoid; }
      @page { margin: 12mm; }
      @media print {
        body { font-size: 9.5pt; margin: 0; padding: 0; max-width: none; }
        main { columns: 65mm 2; column-gap: 8mm; }
        h1 { column-span: all; }
      }
      @media print and (max-width: 100mm) {
        @page { margin: 3mm; }
        body { font-size: 8pt; }
        th { padding-right: .5em; }
      }
      """;

  private final StringBuilder page = new StringBuilder();
  private boolean inTable;

  private SlipHtml() {}

  /** The slip as a whole file, to be written in UTF-8. */
  public static String of(Slip slip) {
    SlipHtml html = new SlipHtml();
    html.page
        .append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n")
        .append("<meta charset=\"utf-8\" />\n")
        .append("<meta http-equiv=\"Content-Security-Policy\"")
        .append(" content=\"default-src 'none'; style-src 'unsafe-inline'\" />\n")
        .append("<meta name=\"viewport\" content=\"width=device-width\" />\n")
        .append("<title>%s</title>\n".formatted(escaped(slip.title())))
        .append("<style>\n%s</style>\n</head>\n<body>\n<main>\n".formatted(STYLE))
        .append("<h1>%s</h1>\n".formatted(escaped(slip.title())));
    slip.sections().forEach(html::section);
    return html.page.append("</main>\n</body>\n</html>\n").toString();
  }

  private void section(Slip.Section section) {
    page.append("<section>\n<h2>%s</h2>\n".formatted(escaped(section.heading())));
    parts(section.parts());
    page.append("</section>\n");
  }

  /** Facts that follow each other are rows of one table. */
  private void parts(List<Part> parts) {
    for (Part part : parts) {
      boolean row = part instanceof Fact;
      if (row != inTable) {
        page.append(row ? "<table>\n" : "</table>\n");
        inTable = row;
      }
      if (part instanceof Fact fact) {
        page.append(
            "<tr><th scope=\"row\">%s</th><td>%s</td></tr>\n"
                .formatted(escaped(fact.label()), escaped(fact.text())));
      } else if (part instanceof Headline headline) {
        page.append("<p class=\"number\">%s</p>\n".formatted(escaped(headline.text())));
      } else if (part instanceof Sentence sentence) {
        page.append("<p>%s</p>\n".formatted(escaped(sentence.text())));
      }
    }
    if (inTable) {
      page.append("</table>\n");
      inTable = false;
    }
  }

  private static String escaped(String text) {
    return text.replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;")
        .replace("'", "&#39;");
  }
}
