package org.broodbench.colony;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Damage by cold and heat against published times, which stand beside each test. */
class DamageValidationTest {
  /** Share of a brood nest of all ages that is lost to cold and heat after some hours. */
  private static double lost(double broodC, int hours) {
    BroodNest nest = new BroodNest();
    nest.addMixed(1000);
    for (int h = 0; h < hours; h++) {
      nest.hour(broodC, broodC, 0, 0);
    }
    return (nest.lostToCold() + nest.lostToHeat()) / 1000;
  }

  /** Laboratory rearing keeps 34.5 °C (BEEBOOK, artificial rearing): no thermal loss in 21 days. */
  @Test
  void broodAtItsTemperatureLosesNothing() {
    assertEquals(0, lost(34.5, 21 * 24), 1e-9);
  }

  /**
   * Q. Wang and others, PLoS ONE 11 (2016), abstract: at 20 °C mortality rises from 12 to 96 h.
   * Order alone; magnitudes were not available.
   */
  @Test
  void longerCoolingKillsMore() {
    assertTrue(lost(20, 96) > lost(20, 48));
    assertTrue(lost(20, 48) > lost(20, 12));
    assertTrue(lost(20, 12) > 0);
  }

  /** The same paper: prepupae are more sensitive than open larvae. Order alone. */
  @Test
  void prepupaeAreMoreSensitiveThanLarvae() {
    assertTrue(cooledAt(10.5 / 21) > 1.5 * cooledAt(6.0 / 21));
    assertTrue(cooledAt(19.0 / 21) > 1.5 * cooledAt(15.0 / 21));
  }

  /** Share of brood lost in two days at 20 °C when it was laid so long before at 34.5 °C. */
  private static double cooledAt(double grown) {
    BroodNest nest = new BroodNest();
    nest.lay(100);
    int hours = (int) (grown / BroodNest.growthPerDay(34.5) * 24);
    for (int h = 0; h < hours; h++) {
      nest.hour(34.5, 34.5, 0, 0);
    }
    double before = nest.all();
    for (int h = 0; h < 48; h++) {
      nest.hour(20, 20, 0, 0);
    }
    return nest.lostToCold() / before;
  }

  /**
   * X. Xu and others, Front. Ecol. Evol. (2023), abstract, Apis cerana prepupae at 40 °C: more than
   * 28 % fail after 12 h and more than 84 % after 16 h.
   */
  @ParameterizedTest
  @CsvSource({"12, 0.20, 0.40", "16, 0.75, 0.93"})
  void broodAtFortyDegrees(int hours, double atLeast, double atMost) {
    double share = lost(40, hours);
    assertTrue(share >= atLeast && share <= atMost, "share: " + share);
  }

  /**
   * A study of heat treatment against mites in 27 colonies, abstract: at 42 °C dead sealed brood is
   * seen when the exposure exceeds 120 min, and rises up to 480 min.
   */
  @Test
  void broodAtFortyTwoDegrees() {
    assertTrue(lost(42, 1) < 0.02, "after 1 h: " + lost(42, 1));
    assertTrue(lost(42, 8) > 0.5, "after 8 h: " + lost(42, 8));
  }

  private static AdultDose held(double nestC, double hours) {
    AdultDose d = new AdultDose();
    for (int i = 0; i < hours * 60; i++) {
      d.add(nestC, 60);
    }
    return d;
  }

  /** "Chill-coma and cold death temperatures of Apis mellifera", abstract: most dead after 50 h. */
  @Test
  void workersInChillComa() {
    assertTrue(held(5, 24).outlivesCold() > 0.9);
    assertTrue(held(5, 80).outlivesCold() <= 0.5);
    assertEquals(0.5, held(5, 50).outlivesCold(), 0.01);
  }

  /** The same paper: bees freeze to death between −2 and −6 °C. */
  @Test
  void frozenBeesDie() {
    assertEquals(0, held(-6, 0.1).outlivesCold());
    assertTrue(held(-1, 0.1).outlivesCold() > 0.99);
  }

  /** Bees that woke again are not counted as half dead. */
  @Test
  void warmthEndsTheComa() {
    AdultDose d = held(5, 40);
    d.add(30, 60);
    assertEquals(1, d.outlivesCold());
  }

  /**
   * H. Kovac and others, Apidologie 45 (2014), abstract: half dead at 50.3 °C; that it was 5 min is
   * second-hand.
   */
  @Test
  void shortLethalHeat() {
    assertEquals(0.5, held(50.3, 5.0 / 60).outlivesHeat(), 0.01);
    assertTrue(held(38, 240).outlivesHeat() == 1);
    assertTrue(held(45, 3).outlivesHeat() > 0.9);
    assertTrue(held(45, 8).outlivesHeat() < 0.1);
  }

  /**
   * A. McAfee and others, Nature Sustainability 3 (2020), abstract: 15 to 38 °C is safe for queens,
   * 2 h at 40 °C is not.
   */
  @Test
  void queensInHeat() {
    assertFalse(held(38, 48).queenAtRisk());
    assertFalse(held(40, 1).queenAtRisk());
    assertTrue(held(40, 2.02).queenAtRisk());
  }
}
