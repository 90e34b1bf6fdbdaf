package org.broodbench.loop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.broodbench.controller.Chemistry;
import org.broodbench.controller.Commands;
import org.broodbench.controller.Controller;
import org.broodbench.controller.ProbePlace;
import org.broodbench.controller.Readings;
import org.broodbench.controller.Reason;
import org.broodbench.controller.Setting;
import org.broodbench.controller.Settings;
import org.junit.jupiter.api.Test;

/** What is told to be left is what the core then takes, to the tick. */
class HeldTimeTest {
  private static final Settings COMB =
      Settings.defaults(ProbePlace.BROOD_COMB, Chemistry.AGM)
          .with(Setting.RELAY_MIN_ON_MILLIS, 60_000)
          .with(Setting.RELAY_MIN_OFF_MILLIS, 60_000);

  private final Readings in = new Readings();
  private final Commands out = new Commands();
  private int atS;

  /** Times told while the heater was held off by a reason, and how long it really was. */
  private void holdsAsTold(Settings settings, int reason, int hours, int cycleS) {
    Controller controller = new Controller(settings);
    HeldTime time = new HeldTime(settings);
    double endsAtS = -1;
    int seen = 0;
    for (atS = 0; atS < hours * 3600; atS++) {
      // a brood that calls and is satisfied in turn, or always calls
      in.broodA.put(cycleS > 0 && atS / cycleS % 2 == 1 ? 3400 : 2500);
      in.pan.put(2500 + atS % 2);
      controller.step(atS * 1000, in, out);
      time.heater(atS, out.heater);
      if (out.heaterReason == reason && !out.heater) {
        double leftS = time.leftS(atS, out);
        assertTrue(leftS > 0, "nothing left at " + atS);
        if (endsAtS >= 0) {
          assertEquals(endsAtS, atS + leftS, 1e-6);
        }
        endsAtS = atS + leftS;
      } else if (endsAtS >= 0) {
        if (out.heater) {
          assertEquals(endsAtS, atS, 1.001, "on at");
          seen++;
        }
        endsAtS = -1;
      }
    }
    assertTrue(seen > 2, "seen " + seen);
  }

  @Test
  void startsOfAnHour() {
    in.battery.put(12_900);
    holdsAsTold(COMB.with(Setting.RELAY_STARTS_PER_HOUR, 3), Reason.STARTS, 9, 100);
  }

  @Test
  void shareWithoutAPanThatIsBelieved() {
    in.battery.put(12_900);
    holdsAsTold(COMB.with(Setting.FITTED_PAN, false), Reason.EFFECT, 4, 0);
  }

  @Test
  void shareWithoutABatteryThatCanBeMeasured() {
    in.battery.clear();
    holdsAsTold(COMB.with(Setting.HEAT_SURVIVAL_CENTI_C, 2700), Reason.BLIND, 8, 0);
  }
}
