package org.broodbench.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.broodbench.hive.HiveSpec;
import org.broodbench.loop.ColonyDay;
import org.broodbench.plant.Plant;
import org.broodbench.rig.Scenario;
import org.broodbench.rig.TestRigs;
import org.broodbench.sky.Forcing;
import org.broodbench.sky.ForcingSettings;
import org.broodbench.sky.WeatherGenerator;
import org.broodbench.sky.WeatherSeries;
import org.junit.jupiter.api.Test;

/** How an outlook is made and what it concludes. */
class OutlooksTest {
  private static ColonyDay day(int day, double bees, double brood, double heaterWh) {
    return new ColonyDay(
        day, bees, 0, brood, 0, 0, 0, 3, 0.1, 0, 0, 5, 34, 33, 0, 5, heaterWh, 69_000, 0);
  }

  private static Course course(String key, double low, double own, double high) {
    return new Course(
        key,
        key,
        List.of(day(1, low, 0, 0)),
        List.of(day(1, own, 0, 0)),
        List.of(day(1, high, 0, 0)));
  }

  private static String concluded(Course... courses) {
    Outlook.Gain gain = Outlooks.gain(List.of(courses), 2000);
    return gain + " " + Outlooks.advice(List.of(courses), gain, 2000);
  }

  @Test
  void whatHeatGainsIsJudgedAgainstTheBestOfTheOthersAtEveryHeatLoss() {
    Course cold = course("no_heat", 900, 800, 0);
    Course board = course("insulation_only", 3000, 3000, 3000);
    Course small = course("smaller_box", 2000, 3050, 1000);
    assertEquals("GAINS GO_ON", concluded(course("heat", 4000, 4000, 4000), cold, board, small));
    assertEquals("DEPENDS GO_ON", concluded(course("heat", 4000, 3000, 4000), cold, board, small));
    assertEquals(
        "NOTHING INSULATE", concluded(course("heat", 3100, 3100, 3100), cold, board, small));
    assertEquals(
        "NOTHING UNPLUG",
        concluded(course("heat", 1050, 1050, 1050), course("no_heat", 1000, 1000, 1000), cold));
    assertEquals(
        "NOTHING CONFINE",
        concluded(
            course("heat", 1500, 2000, 1500), cold, cold, course("smaller_box", 2000, 2100, 1900)));
    assertEquals("DWINDLES UNITE", concluded(course("heat", 2000, 500, 400), cold));
    assertEquals("DWINDLES INSULATE", concluded(course("heat", 0, 0, 0), cold, board));
    assertEquals("NO_HEATER GO_ON", concluded(cold, board, small));
  }

  @Test
  void theNextBoxIsDueWhenBeesCoverFourFifthsOfTheFrames() {
    List<ColonyDay> days = new ArrayList<>();
    for (int d = 1; d <= 20; d++) {
      days.add(day(d, 1000 * d, 0, 0));
    }
    assertEquals(18, Outlooks.nextBox(days)); // ten frames: 17,600 bees
    assertEquals(-1, Outlooks.nextBox(days.subList(0, 17)));
  }

  @Test
  void theSmallerBoxHasFiveFramesAndTheSameWalls() {
    HiveSpec own = TestRigs.insulated(0.05, 2);
    HiveSpec small = Outlooks.smaller(own);
    assertEquals(1, small.boxes().size());
    assertEquals(5, small.boxes().get(0).frames());
    assertEquals(own.widthM() * 5 / own.boxes().get(0).frames(), small.widthM(), 1e-12);
    assertEquals(own.wall(), small.wall());
    assertTrue(small.boxes().get(0).storesKg() <= 8.7);
  }

  private static Outlook outlook(Scenario season, int threads) {
    WeatherSeries w =
        WeatherGenerator.generate(season.weather().generator(season.place(), season.window()));
    Forcing forcing =
        Forcing.of(
            w,
            season.place(),
            season.window().fromEpochS(),
            season.window().toEpochS(),
            Plant.planes(season),
            ForcingSettings.DEFAULT);
    return Outlooks.of(season, forcing, threads, (done, most) -> assertTrue(done <= most));
  }

  /** Two weeks of a small rig: every treatment, every loss, every day; the same on any threads. */
  @Test
  void anOutlookFollowsEveryTreatmentDayByDay() {
    Scenario s = TestRigs.small(LocalDate.of(2026, 4, 22).toEpochDay() * 86_400, 3);
    Scenario season = Outlooks.season(s, 2);
    assertEquals(14, season.window().days());
    Outlook one = outlook(season, 1);
    assertEquals(one, outlook(season, 2));
    assertEquals(
        List.of("heat", "no_heat", "insulation_only", "smaller_box"),
        one.courses().stream().map(Course::key).toList());
    for (Course c : one.courses()) {
      for (List<ColonyDay> days : c.three()) {
        assertEquals(14, days.size());
        assertEquals(14, days.get(13).day());
      }
      assertTrue(c.low(13, ColonyDay::bees) <= c.own().get(13).bees());
      assertTrue(c.high(13, ColonyDay::bees) >= c.own().get(13).bees());
    }
    assertTrue(one.first().own().stream().anyMatch(d -> d.heaterWh() > 20));
    assertTrue(one.courses().get(1).own().stream().allMatch(d -> d.heaterWh() == 0));
    ColonyDay end = one.first().own().get(13);
    assertTrue(end.laid() > 500 && end.brood() > 1500, "the queen lays: " + end);
    assertTrue(end.storesKg() < one.first().own().get(0).storesKg() + 1);
    assertTrue(one.weaning().tried() || one.weaning().startDay() < 0);
  }

  @Test
  void withoutAHeaterThereIsNothingToWean() {
    Scenario s = TestRigs.small(LocalDate.of(2026, 4, 22).toEpochDay() * 86_400, 3);
    Scenario season = Outlooks.season(s.withHeater(s.heater().withoutPower()), 1);
    Outlook o = outlook(season, 2);
    assertEquals(Outlook.Gain.NO_HEATER, o.gain());
    assertEquals("no_heat", o.first().key());
    assertEquals(null, o.weaning());
  }
}
