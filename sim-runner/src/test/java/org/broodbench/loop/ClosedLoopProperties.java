package org.broodbench.loop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Locale;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.constraints.LongRange;
import org.broodbench.controller.Commands;
import org.broodbench.controller.Readings;
import org.broodbench.controller.Sample;
import org.broodbench.controller.Setting;
import org.broodbench.controller.Settings;
import org.broodbench.plant.Plant;
import org.broodbench.power.SupplyChain;
import org.broodbench.rig.RandomRigs;
import org.broodbench.rig.Scenario;

/**
 * Core and plant together on random rigs and weather: no heater energy while a reading is at its
 * limit, and no load that may be shed below the floor of the battery as far as it can be sensed.
 */
class ClosedLoopProperties {

  @Property(tries = 24, shrinking = ShrinkingMode.OFF)
  void limitsAndFloorsHold(@ForAll @LongRange(min = 0, max = 1_000_000) long seed) {
    watch(seed);
  }

  /** The fixed seeds reach what the property is about: limits, sheds, both measures of charge. */
  @Example
  void limitsAndFloorsHoldWhereTheyMatter() {
    int limits = 0;
    int shedsByVolts = 0;
    int shedsByCharge = 0;
    for (long seed = 100; seed < 140; seed++) {
      Watch w = watch(seed);
      limits += w.limitTicks > 0 ? 1 : 0;
      shedsByVolts += w.shedTicks > 0 && !w.byCharge ? 1 : 0;
      shedsByCharge += w.shedTicks > 0 && w.byCharge ? 1 : 0;
    }
    assertTrue(
        limits > 0 && shedsByVolts > 0 && shedsByCharge > 0,
        "limits " + limits + ", sheds by volts " + shedsByVolts + ", by charge " + shedsByCharge);
  }

  private static Watch watch(long seed) {
    RandomRigs random = new RandomRigs(seed);
    Scenario rig = random.scenario(2);
    Watch watch = new Watch(rig);
    Simulation simulation = new Simulation(rig, random.forcing(rig), watch, false);
    watch.plant = simulation.plant();
    simulation.run();
    return watch;
  }

  /** Passes everything on and compares what the core asks with the truth. */
  private static final class Watch implements SteppedController {
    final boolean byCharge;
    Plant plant;
    int limitTicks;
    int shedTicks;

    private final Scenario rig;
    private final Settings set;
    private final ReferenceController core;
    private boolean askedBefore;
    private int lowHeatMillis;
    private int lowFanMillis;

    Watch(Scenario rig) {
      this.rig = rig;
      set = rig.controller().settings();
      core = new ReferenceController(set);
      byCharge = set.is(Setting.SHED_BY_STATE_OF_CHARGE);
    }

    @Override
    public void powerUp() {
      core.powerUp();
      askedBefore = false;
    }

    @Override
    public boolean keyInSetPoint(double setPointC) {
      return core.keyInSetPoint(setPointC);
    }

    @Override
    public void step(int nowMillis, Readings in, Commands out) {
      SupplyChain supply = plant.supply();
      boolean first = nowMillis == 0;
      if (!askedBefore && !first) {
        assertEquals(0, supply.heaterW(), () -> where(nowMillis, "heat that nobody asked for"));
      }
      core.step(nowMillis, in, out);
      askedBefore = out.heater && out.isolation;
      if (atLimit(in.pan, set.get(Setting.LIMIT_PAN_CENTI_C))
          || atLimit(in.broodA, set.get(Setting.LIMIT_BROOD_CENTI_C))) {
        limitTicks++;
        assertTrue(!askedBefore, () -> where(nowMillis, "heat at a limit"));
      }
      if (out.shedLevel > 0) {
        shedTicks++;
      }
      if (!first && !supply.shorePresent()) {
        floors(nowMillis, out, supply);
      }
    }

    private static boolean atLimit(Sample sample, int limitCentiC) {
      return sample.valid && sample.value >= limitCentiC;
    }

    /**
     * The truth may lie below a threshold, by more than readings can be wrong, no longer than the
     * enter delay (and a tick at each of its ends) while a load is on that the threshold sheds.
     */
    private void floors(int nowMillis, Commands out, SupplyChain supply) {
      boolean heat = askedBefore || (out.inverter && rig.inverter().ratedW() > 0);
      lowHeatMillis =
          heat && below(Setting.SHED_HEAT_ENTER_PERMILLE, Setting.SHED_HEAT_ENTER_MILLI_V, supply)
              ? lowHeatMillis + 1000
              : 0;
      lowFanMillis =
          out.fan && below(Setting.SHED_FAN_ENTER_PERMILLE, Setting.SHED_FAN_ENTER_MILLI_V, supply)
              ? lowFanMillis + 1000
              : 0;
      int longest = set.get(Setting.SHED_ENTER_DELAY_MILLIS) + 2000;
      assertTrue(
          lowHeatMillis <= longest, () -> where(nowMillis, "heat or inverter below its floor"));
      assertTrue(lowFanMillis <= longest, () -> where(nowMillis, "fan below its floor"));
    }

    private boolean below(Setting perMille, Setting milliV, SupplyChain supply) {
      if (byCharge) {
        double error = Math.abs(rig.sensors().stateOfChargeError()) + 0.001;
        return supply.battery().stateOfCharge() < set.get(perMille) / 1000.0 - error;
      }
      // corrected volts differ from the true open-circuit volts by what is keyed in wrongly, and
      // while charging by the volts that charging needs on top, which no controller can tell
      double innerOhm =
          supply.batteryA() < 0 ? supply.battery().chargeOhm() : supply.battery().resistanceOhm();
      double trueDropV = (innerOhm + rig.wiring().batteryLeadOhm()) * supply.batteryA();
      double keyedA =
          rig.sensors().batteryCurrent() && set.is(Setting.FITTED_BATTERY_CURRENT)
              ? supply.batteryA()
              : (set.get(Setting.BATTERY_BASE_LOAD_MILLI_A)
                      + set.get(Setting.HEATER_RATED_MILLI_A)
                      + set.get(Setting.FAN_RATED_MILLI_A))
                  * 1e-3;
      double keyedDropV = set.get(Setting.BATTERY_MILLI_OHM) * 1e-3 * keyedA;
      double errorV =
          Math.max(0, keyedDropV - trueDropV) + Math.abs(rig.sensors().voltsErrorV()) + 0.01;
      return supply.battery().ocvV() < set.get(milliV) * 1e-3 - errorV;
    }

    private String where(int nowMillis, String what) {
      return String.format(
          Locale.ROOT,
          "%s: %s at %d s, state of charge %.3f, rested %.3f V",
          rig.title(),
          what,
          nowMillis / 1000,
          plant.supply().battery().stateOfCharge(),
          plant.supply().battery().ocvV());
    }
  }
}
