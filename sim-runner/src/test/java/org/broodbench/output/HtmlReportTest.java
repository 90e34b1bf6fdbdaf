package org.broodbench.output;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.broodbench.study.Outcome;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

class HtmlReportTest {
  private static final String HOSTILE = "<img src=x onerror=alert(1)></script><script>\"'&";

  private static Outcome outcome;
  private static String page;

  @BeforeAll
  static void render() {
    outcome = TestOutcomes.poor(2, HOSTILE);
    page = HtmlReport.html(outcome, false, List.of("Raise it to 33 °C " + HOSTILE));
  }

  @Test
  void equalOutcomesGiveEqualPages() {
    assertEquals(page, HtmlReport.html(outcome, false, List.of("Raise it to 33 °C " + HOSTILE)));
  }

  @Test
  void nothingIsFetched() {
    assertFalse(
        page.replace("&lt;img src=", "").matches("(?s).*<[a-z]+[^>]* src=.*"), "a source is named");
    assertFalse(page.contains("@import"), "a style sheet is named");
    assertFalse(
        page.replace("href=\"data:,\"", "").matches("(?s).*href=\"[^#].*"), "a link leads away");
  }

  @Test
  void hostileWordsStayWords() {
    assertFalse(page.contains("<img"), "a tag came through");
    assertEquals(2, page.split("<script", -1).length - 1, "two script elements, data and program");
    assertEquals(2, page.split("</script", -1).length - 1);
    assertTrue(page.contains("&lt;img src=x onerror=alert(1)&gt;&lt;/script&gt;"));
  }

  @Test
  void aMissedRunSaysSoFirst() {
    int verdict = page.indexOf("Missed: ");
    assertTrue(verdict > 0 && verdict < page.indexOf("The run in pictures"));
  }
}
