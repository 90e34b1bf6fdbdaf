package org.broodbench.input;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;

class ScenarioTextTest {
  private static final String GOOD =
      """
      title = "A case"
      start = 2027-04-20
      [heat]
      set_point = "90 degF"
      [battery]
      capacity = "100 Ah"
      share = 0.5
      [[box]]
      height = "9 1/2 in"
      [[box]]
      [[event]]
      at = 2027-04-21T06:00:00Z
      what = "feed"
      mass = "500 g"
      [[event]]
      at = "2 d 6 h"
      what = "open"
      """;

  private static ScenarioText.Reading read(String text, String... settings) {
    return ScenarioText.read(SampleKeys.keys(), "a.toml", text, List.of(settings));
  }

  private static Values good(String text, String... settings) {
    ScenarioText.Reading reading = read(text, settings);
    assertEquals(List.of(), reading.problems());
    return reading.values();
  }

  @Test
  void readsValuesInBaseUnitsWithTheirPlaces() {
    Values values = good(GOOD);
    assertEquals("A case", values.text("title"));
    assertEquals(LocalDate.of(2027, 4, 20), values.date("start"));
    assertEquals(32.2222, values.number("heat.set_point"), 1e-4);
    assertEquals(new Spot("a.toml", 4, 13), values.spot("heat.set_point"));
    assertEquals("90 degF", values.shown("heat.set_point"));
    assertEquals(360_000, values.number("battery.capacity"));
    assertEquals(0.5, values.number("battery.share"));
    assertEquals(6, values.integer("battery.cells"));
    assertEquals(1.5, values.number("battery.factor"));
    assertFalse(values.flag("battery.old"));
    assertEquals(2, values.rows("box").size());
    assertEquals(0.2413, values.rows("box").get(0).number("height"), 1e-12);
    assertEquals(0.23, values.rows("box").get(1).number("height"), 1e-12);
    long start = LocalDate.of(2027, 4, 20).toEpochDay() * 86_400;
    assertEquals(30 * 3600, values.rows("event").get(0).secondsSince("at", start));
    assertEquals(54 * 3600, values.rows("event").get(1).secondsSince("at", start));
    assertEquals(600, values.rows("event").get(1).number("duration"));
  }

  @Test
  void listsWhatWasLeftAtItsDefault() {
    assertEquals(
        List.of(
            "probe.place = comb",
            "heat.differential = 1 K",
            "heat.min_on = 3 min",
            "battery.cells = 6",
            "battery.factor = 1.5",
            "battery.old = false",
            "box.1.height = 230 mm",
            "event.1.duration = 10 min"),
        good(GOOD).assumed());
    assertTrue(good(GOOD).isAssumed("heat.min_on"));
    assertFalse(good(GOOD).isAssumed("heat.set_point"));
  }

  @Test
  void defaultsFollowOtherKeys() {
    Values values = good("battery.capacity = \"1 kWh\"\n[probe]\nplace = \"edge\"\n");
    assertEquals(22, values.number("heat.set_point"));
    assertEquals(3.6e6, values.quantity("battery.capacity").base());
    assertEquals(1, values.rows("box").size());
    assertEquals(0, values.rows("event").size());
  }

  @Test
  void optionsGoOnTop() {
    Values values =
        good(
            GOOD,
            "heat.set_point=30degC",
            "heat.set_point = \"31 degC\"",
            "battery.cells=12",
            "battery.old=true",
            "start=2027-05-01",
            "box.1.height=300 mm",
            "event.2.at=3 d",
            "event.2.what=open",
            "title=B = C");
    assertEquals(31, values.number("heat.set_point"));
    assertEquals(new Spot("--set", 0, 0), values.spot("heat.set_point"));
    assertEquals(12, values.integer("battery.cells"));
    assertTrue(values.flag("battery.old"));
    assertEquals(LocalDate.of(2027, 5, 1), values.date("start"));
    assertEquals(0.3, values.rows("box").get(1).number("height"), 1e-12);
    assertEquals(3, values.rows("event").size());
    assertEquals("B = C", values.text("title"));
  }

  @Test
  void aGoodOptionHealsABadLineOnlyInTheValues() {
    ScenarioText.Reading reading = read(GOOD.replace("90 degF", "90 W"), "heat.set_point=30 degC");
    assertEquals(1, reading.problems().size());
    assertEquals(30, reading.values().number("heat.set_point"));
  }

  @Test
  void askingForAnUnsoundValueIsToldApart() {
    ScenarioText.Reading reading = read(GOOD.replace("90 degF", "90 W"));
    assertThrows(Values.Unsound.class, () -> reading.values().number("heat.set_point"));
    Checks checks = new Checks(reading.values(), reading.problems());
    checks.run(
        () -> {
          if (reading.values().number("heat.set_point") > 0) {
            throw new AssertionError("the check must be passed over");
          }
        });
    assertEquals(1, reading.problems().size());
  }

  @Test
  void aByteOrderMarkIsNoMistake() {
    assertEquals("A case", good("\ufeff" + GOOD).text("title"));
  }

  @Test
  void rendersProblemsForPeople() {
    List<Problem> problems =
        ScenarioText.sorted(
            read(
                    "[heat]\nset_point = \"45 degC\"\n[battery]\ncapcity = \"100 Ah\"\n",
                    "heat.min_on=5")
                .problems());
    assertEquals(
        """
        a.toml:2:13: heat.set_point: found 45 degC, allowed 10 degC to 38 degC
            Heat stops here.
        a.toml:4:1: battery.capcity: unknown key; did you mean battery.capacity?
        --set: heat.min_on: found 5, allowed a number with a unit: s, min, h, d, ms, week; 0 min to 60 min
            The unit is missing: "5 s"?
        3 problems; nothing was run.
        """,
        ProblemText.render(problems));
  }

  @Test
  void unreadableBytesOfTextAreAProblemAndNoCrash() {
    List<Problem> problems = read("[1#\u0001\u001d\n[]\u0000").problems();
    assertFalse(problems.isEmpty());
  }

  @Test
  void aDefaultThatDependsOnItselfIsAFaultOfTheProgram() {
    Keys.Builder keys = Keys.builder();
    keys.plain("a", Kind.TEXT).byDefault("as b", v -> v.text("b")).help("A.");
    keys.plain("b", Kind.TEXT).byDefault("as a", v -> v.text("a")).help("B.");
    Keys ring = keys.build();
    assertThrows(IllegalStateException.class, () -> ScenarioText.read(ring, "x", "", List.of()));
  }

  @Test
  void wrongDeclarationsAreFaultsOfTheProgram() {
    Keys.Builder twice = Keys.builder();
    twice.plain("a", Kind.TEXT).optional("-").help("A.");
    twice.plain("a", Kind.TEXT).optional("-").help("A.");
    assertThrows(IllegalStateException.class, twice::build);
    Keys.Builder homeless = Keys.builder();
    homeless.plain("a.b", Kind.TEXT).optional("-").help("A.");
    assertThrows(IllegalStateException.class, homeless::build);
    Keys.Builder silent = Keys.builder();
    silent.plain("a", Kind.TEXT).optional("-");
    assertThrows(IllegalStateException.class, silent::build);
  }

  @Test
  void documentsItself() {
    String page = KeyPage.markdown(SampleKeys.keys());
    assertTrue(
        page.contains(
            "| `set_point` | Heat stops here. | degC | 10 degC to 38 degC |"
                + " 33 degC at comb, 22 degC at edge |"),
        page);
    assertTrue(page.contains("### `[[event]]`"), page);
    assertTrue(page.contains("Mass. (only where `what` is `feed`)"), page);
    assertTrue(
        page.contains("| `capacity` | What it holds when new. | Ah | above 0 Ah | **required** |"),
        page);
  }
}
