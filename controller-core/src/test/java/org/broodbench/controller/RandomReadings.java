package org.broodbench.controller;

import java.util.Random;

/**
 * Readings that wander between thresholds, with faults, presses and odd ticks; the pan mostly
 * follows the heater, so that runs last and end in every way.
 */
final class RandomReadings {
  private final Random random;
  private final Readings in = new Readings();
  private final boolean calm;
  private int tick = 1000;
  private int broodC = 3000;
  private int panC = 2500;
  private int outdoorC = 500;
  private int milliV = 12800;
  private int permille = 600;
  private int charge = 600;
  private int milliA = -500;
  private boolean fullPan;
  private boolean frozen;
  private boolean burnt;
  private boolean welded;
  private final boolean summer;
  private boolean first = true;
  private int buttonFor;

  RandomReadings(Random random) {
    this.random = random;
    this.calm = random.nextBoolean();
    this.summer = random.nextInt(4) == 0;
    Bench.calm(in);
    fullPan = random.nextInt(4) == 0;
  }

  Readings readings() {
    return in;
  }

  private boolean chance(int oneIn) {
    return random.nextInt(oneIn) == 0;
  }

  private int pick(int... values) {
    return values[random.nextInt(values.length)];
  }

  /** Turns the readings one step on; the time that goes by, in milliseconds. */
  int next(Commands last) {
    if (first) {
      first = false;
      return 0;
    }
    if (chance(150)) {
      tick = pick(100, 1000, 5000, 20_000, 60_000, 60_000);
    }
    int dt = tick + random.nextInt(1 + tick / 10);
    if (chance(400)) {
      dt = pick(61_000, 300_000, 3_600_000, 30_000_000, 100_000_000, -5000, 0, Integer.MAX_VALUE);
    }
    temperatures(last, dt);
    power(last);
    faults();
    switches();
    return dt;
  }

  private void temperatures(Commands last, int dt) {
    int most = Math.max(1, Math.min(dt, 60_000) / 500);
    int target =
        burnt ? 1500 : last.heater ? 3900 : last.fan ? 2500 : summer ? 3900 : calm ? 2000 : 3000;
    if (chance(200)) {
      broodC = pick(1750, 1800, 2100, 2200, 3000, 3199, 3200, 3300, 3600, 3650, 3700, 3850);
    } else {
      broodC += Integer.signum(target - broodC) * random.nextInt(most + 1);
    }
    int panTarget =
        last.heater && !burnt ? (fullPan ? 4500 : Math.min(broodC + 1200, 3850)) : broodC - 100;
    if (welded) {
      panTarget = broodC + 900;
    }
    panC += Integer.signum(panTarget - panC) * random.nextInt(3 * most + 1);
    if (!burnt && chance(300)) {
      panC = pick(2600, 2899, 2900, 3000, 3600, 3601, 3799, 3800, 4299, 4300);
    }
    if (chance(100)) {
      outdoorC =
          pick(
              -1500,
              499,
              500,
              999,
              1000,
              1800,
              2500,
              3600,
              3900,
              broodC - 101,
              broodC - 100,
              broodC - 99);
    }
    if (chance(60)) {
      permille = pick(300, 749, 750, 751, 849, 850, 900, 989, 990, 1000);
    }
    if (chance(2000)) {
      frozen = !frozen;
    }
    if (chance(800)) {
      burnt = !burnt;
    }
    if (chance(2500)) {
      welded = !welded;
    }
    in.broodA.put(frozen ? in.broodA.value : broodC);
    in.broodB.put(chance(30) ? broodC + pick(-500, -301, -300, 300, 301) : broodC + 50);
    in.pan.put(panC);
    in.top.put(broodC - 300);
    in.outdoor.put(outdoorC);
    in.humidity.put(permille);
  }

  private void power(Commands last) {
    if (chance(120)) {
      milliV =
          pick(
              12_900, 12_900, 12_550, 12_500, 12_450, 12_300, 12_250, 12_200, 12_150, 12_050,
              11_800, 11_600, 10_800, 5_000);
    }
    if (chance(120)) {
      charge = pick(900, 900, 500, 400, 300, 250, 200, 150, 100);
    }
    if (chance(80)) {
      milliA = pick(-6000, -100, 0, 199, 200, 3000, -60_000);
    }
    in.battery.put(milliV + random.nextInt(3) - 1);
    in.batteryCurrent.put(milliA);
    in.stateOfCharge.put(charge);
    in.panelPower.put(milliA > 0 ? milliA * 12 : 0);
    boolean flows = (last.heater && !burnt) || (welded && last.isolation);
    in.heaterCurrent.put(flows ? pick(2499, 2500, 5000) : 0);
    if (chance(500)) {
      in.heaterCurrent.put(2501);
      in.heaterCurrent.ageMillis = pick(0, 1999, 2000, 30_000);
    }
  }

  private Sample lost;
  private int lostFor;

  private void faults() {
    if (lostFor > 0) {
      lostFor--;
    } else if (chance(120)) {
      Sample[] all = {
        in.broodA,
        in.broodB,
        in.pan,
        in.outdoor,
        in.humidity,
        in.battery,
        in.batteryCurrent,
        in.stateOfCharge,
        in.panelPower,
        in.heaterCurrent
      };
      lost = all[random.nextInt(all.length)];
      lostFor = pick(1, 3, 40, 200);
    }
    if (lostFor > 0) {
      switch (random.nextInt(6)) {
        case 0 -> lost.put(8500);
        case 1 -> lost.put(-12_700);
        case 2 -> lost.put(pick(Integer.MIN_VALUE, Integer.MAX_VALUE));
        case 3 -> lost.ageMillis = pick(60_000, 60_001, -1, Integer.MIN_VALUE);
        default -> lost.clear();
      }
    }
  }

  private void switches() {
    if (buttonFor > 0) {
      buttonFor--;
    } else if (chance(250)) {
      buttonFor = pick(1, 2, 3, 8, 60);
    }
    in.button = buttonFor > 0;
    if (chance(200)) {
      in.shorePresent = !in.shorePresent;
    }
    if (chance(200)) {
      in.chargerFull = !in.chargerFull;
    }
    if (chance(150)) {
      in.testRequest = !in.testRequest;
    }
  }
}
