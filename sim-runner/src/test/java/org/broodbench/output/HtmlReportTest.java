package org.broodbench.output;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.broodbench.study.Cautions;
import org.broodbench.study.JudgedRequirement;
import org.broodbench.study.Outcome;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

class HtmlReportTest {
  private static Outcome outcome;
  private static String page;

  @BeforeAll
  static void render() {
    outcome = TestOutcomes.withRemedies();
    page = HtmlReport.html(outcome, false);
  }

  @Test
  void equalOutcomesGiveEqualPages() {
    assertEquals(page, HtmlReport.html(outcome, false));
  }

  @Test
  void noElementNamesASourceOrLeadsAway() {
    Matcher tag = Pattern.compile("<[a-z][^>]*>").matcher(withoutScripts());
    int tags = 0;
    while (tag.find()) {
      tags++;
      String t = tag.group();
      assertFalse(t.contains(" src="), t);
      assertFalse(t.contains(" style="), t);
      assertFalse(t.contains(" href=") && !t.contains("href=\"#") && !t.contains("\"data:,\""), t);
    }
    assertTrue(tags > 500, tags + " tags looked at");
    assertFalse(page.contains("@import"), "a style sheet is named");
  }

  private static String withoutScripts() {
    return page.replaceAll("(?s)<script.*?</script>", "").replaceAll("(?s)<style>.*?</style>", "");
  }

  @Test
  void hostileWordsStayWords() {
    assertFalse(page.contains("<img"), "a tag came through");
    assertEquals(2, page.split("<script", -1).length - 1, "script elements: data and program");
    assertEquals(2, page.split("</script", -1).length - 1);
    assertTrue(page.contains("&lt;img src=x onerror=alert(1)&gt;&lt;/script&gt;"));
  }

  @Test
  void theVerdictStandsFirstMissedOnesBeforeMetOnes() {
    int verdict = page.indexOf("Missed: ");
    assertTrue(verdict > 0 && verdict < page.indexOf("The run in pictures"));
    int lastNotMet =
        Math.max(
            page.lastIndexOf("<li class=\"missed\">"), page.lastIndexOf("<li class=\"depends\">"));
    assertTrue(lastNotMet > 0 && lastNotMet < page.indexOf("<li class=\"met\">"));
    for (JudgedRequirement r : outcome.requirements()) {
      assertTrue(page.contains(RequirementWords.name(r.requirement().kind())));
    }
  }

  @Test
  void everyCautionIsOnThePage() {
    for (String c : Cautions.all()) {
      assertTrue(page.contains(Markup.text(c)), c);
    }
  }

  @Test
  void remediesAreShownOnlyWhereThereAreAny() {
    assertTrue(page.contains("What to change"));
    assertTrue(page.contains("<code>--set heater.power=30</code>"));
    assertTrue(page.contains("None mends everything by itself"));
    assertFalse(HtmlReport.html(TestOutcomes.sixDays(), false).contains("What to change"));
  }

  @Test
  void headingsGoDownOneStepAtATime() {
    Matcher h = Pattern.compile("<h([1-6])").matcher(withoutScripts());
    int before = 0;
    int count = 0;
    while (h.find()) {
      int level = Integer.parseInt(h.group(1));
      assertTrue(level <= before + 1, "h" + level + " after h" + before);
      before = level;
      count++;
    }
    assertTrue(count > 15);
  }

  /** 1.5 MB is what still goes through mail and opens on a phone. */
  @Test
  void eightWeeksAtOneMinuteFitInAMegabyteAndAHalf() {
    Outcome long8 = TestOutcomes.eightWeeks();
    int bytes =
        HtmlReport.html(long8, false).getBytes(java.nio.charset.StandardCharsets.UTF_8).length;
    assertEquals(56 * 1440 + 1, long8.main().trace().rows());
    assertTrue(bytes < 1_500_000, bytes + " bytes");
  }
}
