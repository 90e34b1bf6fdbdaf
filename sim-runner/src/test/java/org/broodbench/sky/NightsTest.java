package org.broodbench.sky;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;

class NightsTest {
  private static long epochS(String text) {
    return Instant.parse(text).getEpochSecond();
  }

  /**
   * At the equator at the equinox day and night are equal, and the sun sets six hours past noon.
   */
  @Test
  void aNightAtTheEquinoxIsHalfADay() {
    List<Nights.Night> nights =
        Nights.between(
            new Place(0, 0, 0), epochS("2027-03-20T00:00:00Z"), epochS("2027-03-23T12:00:00Z"));
    assertEquals(3, nights.size());
    for (Nights.Night n : nights) {
      assertEquals(12 * 3600, n.dawnEpochS() - n.duskEpochS(), 900);
      // the clock is seven minutes ahead of the sun in late March
      assertEquals(18 * 3600 + 7 * 60, Math.floorMod(n.duskEpochS(), 86_400L), 900);
    }
  }

  @Test
  void midsummerNightsAreShortAndPolarOnesGoByTheClock() {
    Nights.Night june =
        Nights.between(
                new Place(52, 5, 0), epochS("2027-06-20T12:00:00Z"), epochS("2027-06-21T12:00:00Z"))
            .get(0);
    assertEquals(7.4, (june.dawnEpochS() - june.duskEpochS()) / 3600.0, 0.2);
    List<Nights.Night> polar =
        Nights.between(
            new Place(75, 30, 0), epochS("2027-06-18T00:00:00Z"), epochS("2027-06-22T00:00:00Z"));
    assertTrue(polar.size() >= 3, polar.toString());
    assertEquals(12 * 3600, polar.get(0).dawnEpochS() - polar.get(0).duskEpochS());
    assertEquals(16 * 3600, Math.floorMod(polar.get(0).duskEpochS(), 86_400L));
  }

  @Test
  void aDayIsRepeatedAndMadeColder() {
    WeatherSeries w =
        WeatherGenerator.generate(
            GeneratorSettings.uplandSpring(2, LocalDate.of(2027, 4, 18).toEpochDay(), 6));
    long from = w.startEpochS() + 2 * 86_400 + 7 * 3600;
    WeatherSeries r = RepeatedDay.of(w, from, 1, 2, -4);
    assertEquals(from - 86_400, r.startEpochS());
    assertEquals(4 * 24, r.n());
    for (int i = 0; i < r.n(); i++) {
      int k = 2 * 24 + 7 + i % 24;
      assertEquals(w.value(Variable.AIR, k) - 4, r.value(Variable.AIR, i), 1e-12);
      assertEquals(w.value(Variable.GHI, k), r.value(Variable.GHI, i), 0.0);
    }
    assertThrows(
        IllegalArgumentException.class, () -> RepeatedDay.of(w, w.endEpochS() - 3600, 1, 1, 0));
  }
}
