package org.broodbench.input;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import org.broodbench.matter.Units;
import org.broodbench.rig.Scenario;

class ScenarioReaderProperties {
  private static final List<String> PIECES =
      List.of(
          "[", "]", "\"", "=", ".", "#", "\n", "'", "{", "}", ",", "[[event]]\n", "°", "9", "-");

  /** Whatever is done to a text, it is read, or refused with places that lie inside it. */
  @Property(tries = 400)
  void aDamagedTextIsReadOrRefused(
      @ForAll @IntRange(max = 250) int at,
      @ForAll @IntRange(max = 6) int removed,
      @ForAll("piece") String inserted) {
    String least = ScenarioReaderTest.LEAST;
    int from = Math.min(at, least.length());
    int to = Math.min(from + removed, least.length());
    String text = least.substring(0, from) + inserted + least.substring(to);
    try {
      ScenarioReader.read("a.toml", text.getBytes(StandardCharsets.UTF_8), List.of());
    } catch (BadInput refused) {
      int lines = text.split("\n", -1).length;
      assertFalse(refused.problems().isEmpty());
      for (Problem problem : refused.problems()) {
        assertEquals("a.toml", problem.file());
        assertTrue(problem.line() >= 0 && problem.line() <= lines, problem::toString);
        assertFalse(problem.found().isEmpty());
      }
    }
  }

  @Provide
  Arbitrary<String> piece() {
    return Arbitraries.of(PIECES);
  }

  /** Any bytes at all. */
  @Property(tries = 200)
  void anyBytesAreReadOrRefused(@ForAll byte[] bytes) {
    try {
      ScenarioReader.read("a.toml", bytes, List.of());
    } catch (BadInput refused) {
      assertFalse(refused.problems().isEmpty());
    }
  }

  /** Every default is inside its bounds and passes every check, whatever the rig. */
  @Property(tries = 300)
  void defaultsFitEveryRig(@ForAll("rig") List<String> rig) {
    Scenario scenario =
        ScenarioReaderTest.read(ScenarioReaderTest.LEAST, rig.toArray(String[]::new));
    assertEquals(List.of(), scenario.controller().settings().problems());
  }

  @Provide
  Arbitrary<List<String>> rig() {
    return Combinators.combine(
            Arbitraries.of("flooded", "agm", "gel", "lfp"),
            Arbitraries.of("brood_comb", "nest_edge", "box_air"),
            Arbitraries.of("12 V", "24 V"),
            Arbitraries.of("dc", "inverter"),
            Arbitraries.doubles().between(1, 5000),
            Arbitraries.doubles().between(0, 500),
            Arbitraries.of("50 Wh", "7 Ah", "2 kWh"))
        .as(
            (chemistry, place, volts, supply, ah, watts, capacity) ->
                List.of(
                    "battery.chemistry=" + chemistry,
                    "probe.brood_a.place=" + place,
                    "battery.nominal_volts=" + volts,
                    "heater.supply=" + supply,
                    "heater.power="
                        + Units.write(watts, Units.get(org.broodbench.matter.Dimension.POWER, "W")),
                    "battery.capacity=" + (ah > 2500 ? capacity : ah + " Ah")));
  }

  /** Every key takes its own default and its own bounds when they are given by option. */
  @Property(tries = 400)
  void everyKeyTakesItsBounds(@ForAll("bounded") Key key, @ForAll boolean high) {
    Bound bound = high ? key.high() : key.low();
    String path = key.path().replace(".*", ".0");
    ScenarioText.Reading reading =
        ScenarioText.read(
            ScenarioKeys.all(),
            "a.toml",
            ScenarioReaderTest.LEAST,
            List.of(path + "=" + bound.text()));
    boolean refused = reading.problems().stream().anyMatch(p -> p.allowed().equals(key.range()));
    assertEquals(bound.open(), refused, path + " = " + bound.text());
  }

  @Provide
  Arbitrary<Key> bounded() {
    return Arbitraries.of(
        ScenarioKeys.all().all().stream()
            .filter(k -> k.low() != null && k.high() != null)
            .toList());
  }
}
