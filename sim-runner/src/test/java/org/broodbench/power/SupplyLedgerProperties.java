package org.broodbench.power;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.SplittableRandom;
import java.util.TreeSet;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.constraints.LongRange;

/**
 * Energy and charge on random chains of every make under random sun, cold and switching. What is
 * left over is compared with the sum of all amounts; only rounding is expected.
 */
class SupplyLedgerProperties {
  private static final double WITHIN = 1e-9;

  /** Rounding of what is in a battery over the 10,000 steps of a day: 2e-16, a hundred times. */
  private static final double ROUNDED = 2e-14;

  @Property(tries = 40, shrinking = ShrinkingMode.OFF)
  void balancesClose(@ForAll @LongRange(min = 0, max = 1_000_000) long seed) {
    run(seed, new TreeSet<>());
  }

  /** The same on fixed seeds, which together open everything that can open. */
  @Example
  void balancesCloseWhateverOpens() {
    TreeSet<String> opened = new TreeSet<>();
    for (long seed = 0; seed < 150; seed++) {
      run(seed, opened);
    }
    assertEquals(
        new TreeSet<>(
            List.of(
                "battery_empty",
                "battery_frozen",
                "battery_fuse",
                "board_current",
                "board_high_volts",
                "board_low_volts",
                "charge_frost",
                "controller_brown_out",
                "heater_fuse",
                "inverter_high_volts",
                "inverter_low_volts",
                "inverter_overload",
                "load_output")),
        opened);
    run(5280, opened); // charge and discharge barred the whole day
  }

  private static double between(SplittableRandom r, double low, double high) {
    return low + (high - low) * r.nextDouble();
  }

  private static SupplySpec spec(SplittableRandom r) {
    double scale = r.nextInt(4) == 0 ? 2 : 1;
    Chemistry chemistry = Chemistry.values()[r.nextInt(4)];
    boolean onInverter = r.nextInt(3) == 0;
    double capacityAh = r.nextInt(3) == 0 ? between(r, 4, 15) : between(r, 15, 120);
    double heaterW = between(r, 10, 250);
    BatterySpec usual =
        new BatterySpec(
            chemistry,
            capacityAh,
            12 * scale,
            between(r, 0.003, 0.06),
            between(r, 0.05, 1),
            capacityAh * between(r, 0.1, 0.5),
            scale * between(r, 13.8, 15.2),
            between(r, 0.9, 1),
            between(r, 0, 0.1),
            between(r, 600, 20_000),
            BatterySpec.Place.OUTDOORS);
    return new SupplySpec(
        new PvSpec(
            List.of(
                new PvGroup(between(r, 10, 300), 50, 180),
                new PvGroup(
                    between(r, 10, 100), 20, 90, -0.0028, PvGroup.Mounting.FLUSH, List.of())),
            r.nextInt(4) > 0 ? PvSpec.Curve.DIODE : PvSpec.Curve.ONE_POINT,
            PvSpec.Cells.values()[r.nextInt(2)],
            45,
            0.95,
            1,
            r.nextBoolean(),
            0.94,
            scale * between(r, 15, 36),
            between(r, 0, 0.5),
            r.nextInt(3) == 0
                ? new LoadOutput(true, 11.3 * scale, 12.4 * scale, 5)
                : LoadOutput.NONE),
        usual,
        new InverterSpec(
            onInverter || r.nextInt(3) == 0 ? between(r, 50, 400) : 0,
            between(r, 1, 12),
            0.06,
            1e-4,
            r.nextInt(3) == 0 ? new InverterSpec.Search(15, 1) : InverterSpec.Search.NONE,
            new InverterSpec.Trips(
                10.8 * scale, 11.8 * scale, 15 * scale, 14.6 * scale, 30, 3, 13.5 * scale, true)),
        new SupplySpec.Heater(heaterW, onInverter ? 230 : 12 * scale, onInverter, r.nextBoolean()),
        new ShoreSpec(r.nextInt(4) == 0, between(r, 20, 200), 0.85),
        new WiringSpec(
            3,
            2.5,
            0.01,
            between(r, 0.005, 0.1),
            r.nextInt(3) == 0 ? between(r, 5, 20) : 0,
            r.nextInt(3) == 0 ? between(r, 1, 10) : 0,
            0.92),
        new SupplySpec.Board(0.6, 9.5 * scale, 10.5 * scale, 5),
        2,
        List.of(
            new LoadSpec("lamp", between(r, 0, 30), 18, 6),
            new LoadSpec("tool", between(r, 0, 200), 8, 9, true)));
  }

  private static void run(long seed, TreeSet<String> opened) {
    SplittableRandom r = new SplittableRandom(seed);
    SupplySpec spec = spec(r);
    double meanC = between(r, -25, 30);
    SupplyChain chain = new SupplyChain(spec, meanC);
    SupplyInputs in = new SupplyInputs(2);
    double t = 0;
    while (t < 86_400) {
      double stepS = r.nextInt(4) == 0 ? 1 + r.nextInt(9) : 10;
      double hour = t / 3600 % 24;
      double sun = Math.max(0, 1 - (hour - 12) * (hour - 12) / 30);
      in.hourOfDay = hour;
      in.groupWM2[0] = 1000 * sun * r.nextDouble();
      in.groupWM2[1] = 700 * sun;
      in.airC = meanC + 6 * sun;
      in.batteryPlaceC = in.airC;
      in.windMS = 3 * r.nextDouble();
      if (r.nextInt(60) == 0) {
        in.heater = r.nextInt(3) > 0;
        in.fan = r.nextBoolean();
        in.inverter = r.nextInt(4) > 0;
      }
      if (r.nextInt(3000) == 0) {
        chain.setShore(r.nextBoolean());
      }
      chain.solve(stepS, in);
      if (r.nextInt(8) == 0) {
        stepS = 1;
        chain.solve(stepS, in);
      }
      chain.accept();
      t += stepS;
      double v = chain.volts();
      assertTrue(v > 0 && v < 60, "seed " + seed + ": " + v + " V at " + t + " s");
    }
    for (SupplyUse.Opened c : chain.use().cutOuts()) {
      if (c.trips() > 0) {
        opened.add(c.name());
      }
    }
    PowerLedger p = chain.ledger();
    double energyJ =
        p.pvUsedJ
            + p.shoreJ
            + Math.abs(p.batteryChangeJ)
            + p.heaterJ
            + p.fanJ
            + p.controllerJ
            + p.otherLoadsJ
            + p.chargeLossJ
            + p.batteryLossJ
            + p.inverterLossJ
            + p.wiringLossJ;
    double chargeAh = p.chargeInAh + p.chargeOutAh + p.chargeLostAh + Math.abs(p.chargeStoredAh);
    assertEquals(0, p.energyResidualJ() / energyJ, WITHIN, "energy, seed " + seed);
    // where a cut-out stays open next to nothing flows, and what is in the battery is rounded
    double roundedAh = ROUNDED * spec.battery().capacityAh();
    assertEquals(0, p.chargeResidualAh(), WITHIN * chargeAh + roundedAh, "charge, seed " + seed);
    assertTrue(p.pvUsedJ <= p.pvAvailableJ, "no more than there was, seed " + seed);
    double least =
        Math.min(
            Math.min(Math.min(p.heaterJ, p.fanJ), Math.min(p.controllerJ, p.otherLoadsJ)),
            Math.min(
                Math.min(p.chargeLossJ, p.batteryLossJ),
                Math.min(p.inverterLossJ, Math.min(p.wiringLossJ, p.pvUsedJ))));
    assertTrue(least >= 0, "every term counts upwards, seed " + seed);
  }
}
