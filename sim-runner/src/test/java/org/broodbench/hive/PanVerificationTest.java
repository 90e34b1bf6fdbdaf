package org.broodbench.hive;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.broodbench.colony.BroodDose;
import org.broodbench.colony.ColonySpec;
import org.broodbench.matter.Material;
import org.junit.jupiter.api.Test;

/** Plate and pan in the run's network against closed sums; hazards of a heater that never stops. */
class PanVerificationTest {
  private static final double PAN_M2 = 0.15;

  private static Pan pan(Pan.Fill fill, Pan.Contact contact, double massKg) {
    return Pan.filled(
        massKg * fill.material().specificHeatJKgK(),
        Pan.fromPlateWK(fill, contact, 0.09, PAN_M2, massKg),
        Pan.throughWK(fill, PAN_M2, massKg),
        PAN_M2,
        PAN_M2 / HeatFlow.UP.surfaceM2KW(),
        0);
  }

  private static HiveModel atRest(Pan pan, double heaterW) {
    HeaterSpec heater =
        new HeaterSpec(heaterW, 12, false, true, 400, 0.09, 0, pan, HeaterSpec.Limits.USUAL);
    Outside outside = Hives.outside(0);
    HiveModel m =
        new HiveModel(
            Hives.closed(List.of(Hives.PINE), 0.244, 1, 0),
            Hives.NO_BEES,
            heater,
            Hives.NO_FAN,
            101_325,
            outside);
    Hives.run(m, 36_000, 7_200_000, heaterW, outside);
    return m;
  }

  /**
   * At rest all power goes up through contact, three resistances of sand (a quarter, a half and a
   * quarter of its depth) and the surface: 5 kg on 0.15 m² lie 20.8 mm deep, λ 0.27.
   */
  @Test
  void sandStandsBetweenPlateAndBees() {
    HiveModel m = atRest(pan(Pan.Fill.SAND, Pan.Contact.FLAT, 5), 20);
    double depthM = 5 / (1600 * PAN_M2);
    assertEquals(0.0208, depthM, 0.0001);
    double plateC = m.view().nodeC(m.view().plateNode(), 1);
    double coreC = m.view().nodeC(m.view().panCoreNode(), 1);
    double topC = m.view().nodeC(m.view().panNode(), 1);
    double airC = m.view().nodeC(m.view().broodAirNode(), 1);
    assertEquals(20 / (PAN_M2 * 0.27 / (depthM / 4)), coreC - topC, 1e-6);
    double below = (1 / 170.0 + depthM / 4 / 0.27) / 0.09;
    assertEquals(20 * (below + depthM / 2 / 0.27 / PAN_M2), plateC - coreC, 1e-6);
    assertEquals(20 * 0.10 / PAN_M2, topC - airC, 1e-6);
  }

  /** Water is of one temperature; loose contact makes the plate hotter and bees no warmer. */
  @Test
  void contactHeatsThePlateAlone() {
    HiveModel bonded = atRest(pan(Pan.Fill.WATER, Pan.Contact.BONDED, 5), 20);
    HiveModel loose = atRest(pan(Pan.Fill.WATER, Pan.Contact.LOOSE, 5), 20);
    assertEquals(bonded.view().panNode(), bonded.view().panCoreNode());
    double hotterK =
        loose.view().nodeC(loose.view().plateNode(), 1)
            - bonded.view().nodeC(bonded.view().plateNode(), 1);
    assertEquals(20 / 0.09 * (1 / 50.0 - 1 / 500.0), hotterK, 1e-6);
    assertEquals(
        bonded.view().nodeC(bonded.view().panNode(), 1),
        loose.view().nodeC(loose.view().panNode(), 1),
        1e-6);
  }

  /** Beads conduct less than sand, so their plate is hotter; a bare plate is cooler than both. */
  @Test
  void fillingsInOrder() {
    double sandC = plateC(Pan.Fill.SAND);
    double beadsC = plateC(Pan.Fill.GLASS_BEADS);
    double bareC = plateC(Pan.Fill.NONE);
    assertTrue(bareC < sandC && sandC < beadsC, bareC + " " + sandC + " " + beadsC);
  }

  private static double plateC(Pan.Fill fill) {
    HiveModel m = atRest(pan(fill, Pan.Contact.FLAT, 5), 20);
    return m.view().nodeC(m.view().plateNode(), 1);
  }

  /**
   * P. Zehner and E. U. Schlünder, Chem. Ing. Tech. 42 (1970) 933-941: a bed of spheres of
   * conductivity ratio k = λ_solid/λ_air and void share ε, B = 1.25 ((1−ε)/ε)^(10/9). Glass 1.0 and
   * air 0.026 W/(m K), ε 0.38, as the material table has it.
   */
  @Test
  void glassBeadsByZehnerAndSchluender() {
    double air = 0.026;
    double k = 1.0 / air;
    double voids = 0.38;
    double b = 1.25 * StrictMath.pow((1 - voids) / voids, 10.0 / 9);
    double n = 1 - b / k;
    double core =
        2 / n * (b * (1 - 1 / k) / (n * n) * StrictMath.log(k / b) - (b + 1) / 2 - (b - 1) / n);
    double root = StrictMath.sqrt(1 - voids);
    double lambda = air * (1 - root + root * core);
    assertEquals(Material.GLASS_BEADS.conductivityWMK(), lambda, 0.01);
  }

  /**
   * A stuck relay: 20 W without end in a hive of about half a watt per kelvin. The brood passes 40
   * °C, where it dies within hours.
   */
  @Test
  void aStuckHeaterKillsTheBrood() {
    HiveSpec hive = Hives.closed(List.of(Hives.PINE, Hives.EPS_50), 0.244, 1, 4);
    assertEquals(0.47, Iso6946.hiveWK(hive), 0.03);
    Outside outside = Hives.outside(8);
    HiveModel m =
        new HiveModel(
            hive,
            new ColonySpec(2500, 0.115, 2000, 2, 2, 40, 0.5, true),
            new HeaterSpec(
                20,
                12,
                false,
                true,
                400,
                0.09,
                0.05,
                pan(Pan.Fill.SAND, Pan.Contact.FLAT, 5),
                HeaterSpec.Limits.USUAL),
            Hives.NO_FAN,
            101_325,
            outside);
    BroodDose dose = new BroodDose();
    double highestC = 0;
    for (double t = 0; t < 4 * 86_400; t += 10) {
      m.solve(10, 20, false, 0, outside);
      m.accept();
      highestC = Math.max(highestC, m.view().nestC(1));
      dose.add(m.view().nestC(1), 10);
    }
    assertTrue(highestC > 40, "highest " + highestC);
    assertTrue(dose.lostToHeat() > 0.5, "lost " + dose.lostToHeat());
  }

  /**
   * A heater that made a colony of 0.3 kg raise much brood fails at −10 °C: in two days more brood
   * is lost than in a hive that was never heated and has little.
   */
  @Test
  void losingTheHeaterHurtsTheHeatedMore() {
    double heated = broodLost(4000, 5);
    double never = broodLost(500, 0);
    assertTrue(heated > 2 * never, "cells lost " + heated + " and " + never);
  }

  /** Cells lost in two days at −10 °C without heat, after some days with it. */
  private static double broodLost(double cells, double heatedDays) {
    Outside outside = Hives.outside(-10);
    HiveModel m =
        new HiveModel(
            Hives.closed(List.of(Hives.PINE), 0.244, 1, 4),
            new ColonySpec(2600, 0.115, cells, 2, 2, 40, 0.5, true),
            new HeaterSpec(
                20,
                12,
                false,
                true,
                400,
                0.09,
                0.05,
                pan(Pan.Fill.SAND, Pan.Contact.FLAT, 5),
                HeaterSpec.Limits.USUAL),
            Hives.NO_FAN,
            101_325,
            outside);
    boolean on = true;
    for (double t = 0; t < heatedDays * 86_400; t += 10) {
      on = m.view().nestC(1) < 34;
      m.solve(10, on ? 20 : 0, false, 0, outside);
      m.accept();
    }
    BroodDose dose = new BroodDose();
    for (double t = 0; t < 2 * 86_400; t += 10) {
      m.solve(10, 0, false, 0, outside);
      m.accept();
      dose.add(m.view().nestC(1), 10);
    }
    assertTrue(m.view().nestC(1) < 32, "nest " + m.view().nestC(1));
    return cells * dose.lostToCold();
  }
}
