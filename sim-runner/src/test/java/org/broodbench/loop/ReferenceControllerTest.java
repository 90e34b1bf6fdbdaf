package org.broodbench.loop;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.broodbench.controller.Chemistry;
import org.broodbench.controller.Commands;
import org.broodbench.controller.ProbePlace;
import org.broodbench.controller.Readings;
import org.broodbench.controller.Setting;
import org.broodbench.controller.Settings;
import org.junit.jupiter.api.Test;

class ReferenceControllerTest {
  private static final Settings SETTINGS =
      Settings.defaults(ProbePlace.BROOD_COMB, Chemistry.AGM)
          .with(Setting.HEATER_RATED_MILLI_A, 3333);

  private final ReferenceController controller = new ReferenceController(SETTINGS);
  private final Readings cold = new Readings();
  private final Commands commands = new Commands();
  private int nowMillis;

  private void stepFor(int seconds) {
    for (int i = 0; i < seconds; i++) {
      nowMillis += 1000;
      cold.broodA.put(2000);
      cold.pan.put(2000 + i % 2); // a reading that never moves would be taken for a stuck probe
      cold.battery.put(12800);
      controller.step(nowMillis, cold, commands);
    }
  }

  /** The heater runs when the bus dies; after power-up it waits for all of its minimum off. */
  @Test
  void aHeaterThatLostItsBusWaitsForItsWholePause() {
    int minOffS = SETTINGS.get(Setting.RELAY_MIN_OFF_MILLIS) / 1000;
    stepFor(minOffS + 120);
    assertTrue(commands.heater, "the heater runs before power is lost");
    controller.powerUp();
    stepFor(minOffS - 1);
    assertFalse(commands.heater, "within minimum off after power-up");
    stepFor(5);
    assertTrue(commands.heater, "after minimum off the heater runs again");
  }

  /** Keying in a set point is no loss of power: a running heater stays on. */
  @Test
  void aNewSetPointDoesNotStopARunningHeater() {
    stepFor(600);
    assertTrue(controller.keyInSetPoint(34));
    stepFor(1);
    assertTrue(commands.heater);
  }
}
