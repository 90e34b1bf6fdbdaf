package org.broodbench.loop;

import org.broodbench.controller.Commands;
import org.broodbench.controller.Controller;
import org.broodbench.controller.IllegalSettings;
import org.broodbench.controller.Readings;
import org.broodbench.controller.Setting;
import org.broodbench.controller.Settings;

/**
 * The reference core as the loop steps it. Its state is in memory that outlives a loss of power.
 */
public final class ReferenceController implements SteppedController {
  private Settings settings;
  private Controller controller;

  /**
   * A core that was just powered up for the first time.
   *
   * @throws IllegalSettings where the core refuses the settings
   */
  public ReferenceController(Settings settings) {
    this.settings = settings;
    this.controller = new Controller(settings);
  }

  @Override
  public void powerUp() {
    // the relays fell open with the bus, so minimum off begins anew
    restart(true);
  }

  /**
   * State written out and read back; the next step counts no time.
   *
   * @param powerWasLost whether the outputs were off in between (rule R7)
   */
  public void restart(boolean powerWasLost) {
    rebuild(settings);
    if (powerWasLost) {
      controller.powerWasLost();
    }
  }

  /**
   * Another value for one setting while it runs.
   *
   * @return false where the core refuses it; nothing has changed then
   */
  public boolean keyIn(Setting setting, int value) {
    Settings changed = settings.with(setting, value);
    if (!changed.problems().isEmpty()) {
      return false;
    }
    settings = changed;
    rebuild(changed);
    return true;
  }

  @Override
  public void step(int nowMillis, Readings readings, Commands commands) {
    controller.step(nowMillis, readings, commands);
  }

  @Override
  public boolean keyInSetPoint(double setPointC) {
    return keyIn(Setting.HEAT_SET_POINT_CENTI_C, (int) StrictMath.round(setPointC * 100));
  }

  private void rebuild(Settings next) {
    int[] words = new int[controller.stateWords()];
    controller.save(words);
    Controller fresh = new Controller(next);
    fresh.restore(words);
    controller = fresh;
  }
}
