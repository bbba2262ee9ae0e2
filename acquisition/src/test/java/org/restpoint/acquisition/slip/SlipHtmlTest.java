package org.restpoint.acquisition.slip;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.StringReader;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

/** A slip as a page, read by a parser that forgives nothing. */
class SlipHtmlTest {

  private static final String ATTACK = "<script>alert(1)</script> & \"O'Brien\" ]]> <!--";

  private static String html(String result, String grower) {
    return SlipHtml.of(
        Slip.of(
            Slips.changed(
                result, json -> json.withObject("/sample").put("grower", grower).put(grower, "x")),
            Slips.NITRATE));
  }

  private static Document parsed(String html) throws Exception {
    return DocumentBuilderFactory.newInstance()
        .newDocumentBuilder()
        .parse(new InputSource(new StringReader(html)));
  }

  @ParameterizedTest
  @ValueSource(strings = {"soil", "water", "unsettled"})
  void itIsWellFormedAndHasALanguageATitleHeadingsAndNamedRows(String result) throws Exception {
    Document page = parsed(html(result, "Åsa \u0000\u001b Lindqvist"));
    assertThat(page.getDocumentElement().getAttribute("lang")).isEqualTo("en");
    assertThat(page.getElementsByTagName("title").item(0).getTextContent())
        .isEqualTo(page.getElementsByTagName("h1").item(0).getTextContent());
    assertThat(page.getElementsByTagName("h1").getLength()).isOne();
    NodeList rows = page.getElementsByTagName("tr");
    assertThat(rows.getLength()).isGreaterThan(8);
    for (int i = 0; i < rows.getLength(); i++) {
      Element name = (Element) rows.item(i).getFirstChild();
      assertThat(name.getTagName()).isEqualTo("th");
      assertThat(name.getAttribute("scope")).isEqualTo("row");
    }
    assertThat(page.getElementsByTagName("h2").getLength())
        .isEqualTo(page.getElementsByTagName("section").getLength());
  }

  @Test
  void whatAGrowerIsCalledIsTextAndNothingElse() throws Exception {
    String html = html("soil", ATTACK);
    Document page = parsed(html);
    assertThat(page.getElementsByTagName("script").getLength()).isZero();
    assertThat(page.getElementsByTagName("table").item(0).getTextContent()).contains(ATTACK);
    assertThat(html).doesNotContain("<script").doesNotContain("\"O'Brien");
  }

  @Test
  void nothingIsFetchedFromElsewhere() {
    assertThat(html("soil", "x"))
        .doesNotContain("http:")
        .doesNotContain("https:")
        .doesNotContain("src=")
        .doesNotContain("href=")
        .doesNotContain("url(")
        .doesNotContain("@import");
  }

  @Test
  void itSaysWhatTheTextSays() throws Exception {
    Slip slip = Slip.of(Slips.result("soil"), Slips.NITRATE);
    String page = parsed(SlipHtml.of(slip)).getElementsByTagName("main").item(0).getTextContent();
    assertThat(letters(page).toLowerCase(java.util.Locale.ROOT))
        .isEqualTo(letters(SlipText.of(slip, 80)).toLowerCase(java.util.Locale.ROOT));
  }

  private static String letters(String text) {
    return text.replaceAll("[\\s\u00a0=]", "");
  }
}
