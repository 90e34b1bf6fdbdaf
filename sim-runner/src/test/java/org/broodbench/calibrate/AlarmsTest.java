package org.broodbench.calibrate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

/** What is said of changes between the halves of a log. */
class AlarmsTest {
  /** A change with an interval of a twentieth, or of a shift of 0.2 K, to either side. */
  private static Calibration.Trend trend(Knob k, double change, double explains) {
    boolean shift = k.isOffset();
    return new Calibration.Trend(
        k,
        1,
        change,
        change,
        shift ? change - 0.2 : 0.95 * change,
        shift ? change + 0.2 : 1.05 * change,
        explains,
        false);
  }

  private static List<Calibration.Finding> of(Calibration.Trend... trends) {
    return Alarms.of(List.of(), List.of(trends));
  }

  private static String names(Calibration.Trend... trends) {
    return String.join(" ", of(trends).stream().map(Calibration.Finding::name).toList());
  }

  @Test
  void theCauseThatExplainsMostIsTold() {
    assertEquals(
        "heater_weakening",
        names(trend(Knob.HEATER_POWER, 0.7, 1), trend(Knob.HIVE_LOSS, 1.4, 0.5)));
    assertEquals(
        "insulation_wet", names(trend(Knob.HIVE_LOSS, 1.5, 1), trend(Knob.COLONY_BEES, 0.7, 0.5)));
    assertEquals("insulation_wet", names(trend(Knob.AIR_LEAKAGE, 2, 1)));
    assertEquals(
        "colony_falling", names(trend(Knob.COLONY_BEES, 0.6, 1), trend(Knob.HIVE_LOSS, 1.3, 0.7)));
    assertEquals("colony_rising", names(trend(Knob.COLONY_BEES, 1.6, 1)));
    assertEquals(
        "battery_ageing",
        names(trend(Knob.BATTERY_CAPACITY, 0.6, 1), trend(Knob.BATTERY_RESISTANCE, 1.2, 1)));
  }

  @Test
  void whatTheLogCannotTellApartIsNamedTogether() {
    List<Calibration.Finding> found =
        of(trend(Knob.HIVE_LOSS, 1.3, 1), trend(Knob.COLONY_BEES, 0.7, 0.9));
    assertEquals(1, found.size(), found.toString());
    assertEquals("hive_colder", found.get(0).name());
    String text = found.get(0).text();
    assertTrue(text.contains("wet insulation") && text.contains("count the frames"), text);
    assertTrue(found.get(0).why().contains("hive_loss: second half over first 1.30"));
    assertTrue(found.get(0).why().contains("colony_bees: second half over first 0.70"));
    assertEquals(
        "hive_warmer", names(trend(Knob.COLONY_BEES, 1.4, 1), trend(Knob.HIVE_LOSS, 0.8, 0.9)));
    // walls and openings are one cause
    assertEquals(
        "insulation_wet", names(trend(Knob.HIVE_LOSS, 1.3, 1), trend(Knob.AIR_LEAKAGE, 2, 0.9)));
  }

  @Test
  void whatDerivativesPutFirstStaysInQuestion() {
    Calibration.Trend open =
        new Calibration.Trend(Knob.COLONY_BEES, 1, 0.7, 0.7, 0.65, 0.75, 0.2, true);
    List<Calibration.Finding> found = of(trend(Knob.HIVE_LOSS, 1.3, 1), open);
    assertEquals("hive_colder", found.get(0).name());
    assertEquals("colony_falling", names(trend(Knob.HEATER_POWER, 0.98, 1), open));
  }

  @Test
  void aProbeThatMovedIsNoHiveThatChanged() {
    List<Calibration.Finding> found =
        of(trend(Knob.BROOD_A_OFFSET, -1.2, 1), trend(Knob.COLONY_BEES, 0.7, 0.9));
    assertEquals(1, found.size(), found.toString());
    assertEquals("probe_moved", found.get(0).name());
    assertTrue(found.get(0).text().contains("brood_a reads otherwise"), found.get(0).text());
    // the other way round it is the hive, and the probe stands among the figures
    found = of(trend(Knob.COLONY_BEES, 0.7, 1), trend(Knob.BROOD_A_OFFSET, -1.2, 0.9));
    assertEquals("colony_falling", found.get(0).name());
    assertTrue(found.get(0).why().contains("brood_a_offset: second half less first -1.2 K"));
  }

  @Test
  void whatIsSmallUnsureOrGoodNewsRaisesNothing() {
    assertEquals("", names());
    assertEquals("", names(trend(Knob.HEATER_POWER, 0.95, 1)));
    assertEquals("", names(trend(Knob.HIVE_LOSS, 0.8, 1)));
    assertEquals(
        "", names(new Calibration.Trend(Knob.HEATER_POWER, 38, 27, 0.7, 0.45, 1.1, 1, false)));
    assertEquals("", names(trend(Knob.PAN_OFFSET, 0.3, 1)));
  }

  @Test
  void behindOneThatDoesNotMatterAnotherIsTold() {
    // a weak battery lets the heater give a little less
    assertEquals(
        "battery_ageing",
        names(trend(Knob.HEATER_POWER, 0.98, 1), trend(Knob.BATTERY_CAPACITY, 0.5, 0.8)));
    assertEquals(
        "", names(trend(Knob.HEATER_POWER, 0.98, 1), trend(Knob.BATTERY_CAPACITY, 0.5, 0.3)));
  }
}
