package org.broodbench.colony;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** Balances and limits of the numbers of bees and brood. */
class PopulationVerificationTest {
  private static final ColonySpec SMALL = new ColonySpec(2500, 0.115, 2000, 2, 2, 40, 0.5, true);

  private static Hour fair() {
    Hour h = new Hour();
    h.nestC = 34.5;
    h.airC = 22;
    h.lightHours = 14;
    h.storesKg = 4;
    h.combCells = 60_000;
    return h;
  }

  /** Days with so many hours of flight, in the middle of each. */
  private static void live(Population p, Hour h, int days, int flightHours) {
    for (int d = 0; d < days; d++) {
      for (int i = 0; i < 24; i++) {
        h.flight = i >= 8 && i < 8 + flightHours ? 1 : 0;
        p.hour(h);
      }
    }
  }

  /** Every bee and every egg is accounted for, in fair days, in frost and in hunger. */
  @Test
  void nobodyIsLostFromTheBooks() {
    Population p = new Population(SMALL);
    Hour h = fair();
    live(p, h, 20, 6);
    h.nestC = 26;
    h.airC = 5;
    live(p, h, 4, 0);
    h.nestC = 39;
    live(p, h, 2, 3);
    h.storesKg = 0;
    h.nestC = 33;
    live(p, h, 5, 2);
    BroodNest b = p.brood();
    double beesThere = 2500 + p.emerged() - p.lost() - p.chilled();
    double cells =
        2000 + p.laid() - p.emerged() - b.lostToCold() - b.lostToHeat() - b.lostOtherwise();
    assertEquals(beesThere, p.bees(), 1e-6);
    assertEquals(cells, b.all(), 1e-6);
    assertTrue(b.lostToCold() > 0 && b.lostToHeat() > 0 && p.lost() > 0, "all ways were taken");
  }

  /** A small colony in warmth and forage grows; without flight, pollen or queen it does not. */
  @Test
  void aColonyGrowsWhereItCan() {
    Population fed = new Population(SMALL);
    live(fed, fair(), 56, 6);
    assertTrue(fed.bees() > 4000, "bees " + fed.bees());
    Population shutIn = new Population(SMALL);
    live(shutIn, fair(), 56, 0);
    assertTrue(shutIn.pollenKg() < 0.01);
    assertTrue(shutIn.bees() < fed.bees());
  }

  /** Eggs never exceed what the bees can cover, and none are laid in a cold or dark season. */
  @Test
  void layingHasItsLimits() {
    Population p = new Population(SMALL);
    Hour h = fair();
    live(p, h, 1, 6);
    assertTrue(p.laid() <= 3.2 * 0.6 * 2500 / 20.5 && p.laid() > 100, "laid " + p.laid());
    Population cold = new Population(SMALL);
    h.nestC = 29.9;
    live(cold, h, 3, 6);
    assertEquals(0, cold.laid());
    Population winter = new Population(SMALL);
    Hour dark = fair();
    dark.lightHours = 8.5;
    live(winter, dark, 3, 0);
    assertEquals(0, winter.laid());
  }

  /** The comb of a full box leaves no room for eggs. */
  @Test
  void noRoomNoEggs() {
    Population p = new Population(SMALL);
    Hour h = fair();
    h.combCells = 2000 + 4 / 4.2e-4 - 1;
    live(p, h, 1, 0);
    assertTrue(p.laid() < 150, "only what emergence frees: " + p.laid());
  }

  /** Brood beyond what the bees can cover takes the temperature of the air. */
  @Test
  void bareBroodIsChilled() {
    Population p = new Population(new ColonySpec(500, 0.115, 3000, 2, 2, 40, 0.5, true));
    Hour h = fair();
    h.airC = 10;
    p.hour(h);
    assertEquals(1 - 0.8 * 3.2 * 500 / 3000, p.uncovered(), 0.01);
    live(p, h, 2, 0);
    assertTrue(p.brood().lostToCold() > 300, "lost " + p.brood().lostToCold());
  }

  /** Bees above 36 °C fan and hang outside: less heat is left in the nest, more air moves. */
  @Test
  void hotBeesFanAndHangOutside() {
    ColonyHeat c = new ColonyHeat(new ColonySpec(15_000, 0.115, 5000, 4, 2, 40, 0.5, true));
    c.evaluate(35, 33);
    assertEquals(0, c.fannedM3S());
    double heatAt35 = c.heatW();
    c.evaluate(40, 38);
    assertTrue(c.fannedM3S() > 0.5e-3 && c.fannedM3S() <= 1e-3);
    assertTrue(c.heatW() < 0.75 * heatAt35, c.heatW() + " W against " + heatAt35);
  }
}
