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

  /** What goes into the bus comes out of it: the drawn flows are those of the ledger. */
  @Test
  void theFlowsOfTheSupplyChainBalanceAtTheBus() {
    SupplyFlows f = SupplyFlows.of(outcome);
    double drawn = f.straight().stream().mapToDouble(SupplyFlows.Flow::wh).sum();
    drawn += f.behindInverter().stream().mapToDouble(SupplyFlows.Flow::wh).sum();
    drawn += f.lost(SupplyFlows.Place.INVERTER) + f.lost(SupplyFlows.Place.CHARGE);
    double wires = f.lost(SupplyFlows.Place.WIRES);
    double left = f.panelWh() + f.mainsWh() + f.dischargedWh() - f.chargedWh() - drawn;
    // the leads of the battery lie on its side of the bus, the heater's wire on the other
    assertTrue(left >= -1e-6 && left <= wires + 1e-6, left + " of " + wires);
    assertTrue(f.chargedWh() > 0 && f.dischargedWh() > 0);
    for (SupplyFlows.Loss l : f.losses()) {
      assertTrue(l.wh() <= f.losses().get(0).wh());
    }
    assertTrue(page.contains("The largest loss is in <b>" + f.losses().get(0).place().words));
  }

  @Test
  void whatSwitchedItselfOffIsTold() {
    assertTrue(page.contains("Nothing did: no fuse"), "six days on a poor rig open nothing");
    String ruin = HtmlReport.html(TestOutcomes.ruin(), false);
    assertTrue(ruin.contains("Fuses, protections and cut-outs that opened"));
    assertTrue(ruin.contains("by itself"));
  }

  /** The drawing has every part, and the numbers at the worst moment are those of the run. */
  @Test
  void theHiveIsCutOpenAtTheWorstMoment() {
    SectionData data = new SectionData(outcome);
    double apartS = Math.abs(data.worstAtS() - outcome.main().brood().low().atS());
    assertTrue(apartS <= 300, apartS + " s from the coldest moment");
    assertEquals(outcome.main().brood().low().value(), data.worst("nest"), 0.2);
    assertEquals(outcome.main().coldest().lid().insideC(), data.worst("lid_in"), 0.5);
    for (String part : new String[] {"nest", "mantle", "air0", "comb0", "contact", "plate"}) {
      assertTrue(page.contains("data-c=\"" + part + "\""), part);
    }
    assertTrue(page.contains(SectionPart.number(data, "nest", "t", new Markup(false))));
    assertTrue(page.contains("Where water condensed"));
    int rows = outcome.main().trace().sections().size();
    assertEquals(6 * 144, rows, "a picture every ten minutes");
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
