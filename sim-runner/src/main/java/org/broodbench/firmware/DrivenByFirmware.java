package org.broodbench.firmware;

import org.broodbench.controller.Commands;
import org.broodbench.controller.Readings;
import org.broodbench.controller.Setting;
import org.broodbench.controller.Settings;
import org.broodbench.loop.SteppedController;

/**
 * Firmware as the loop steps it, with the reference stepped beside it by the same readings. After a
 * fault the outputs stay as they were last, or go off where the heater was seen to fail off.
 */
final class DrivenByFirmware implements SteppedController {
  private final Conversation conversation;
  private final Reference shadow;
  private long entries;
  private Difference difference;
  private FirmwareFault fault;
  private Boolean failedOff;
  private final int[] last = new int[CommandField.COUNT];

  DrivenByFirmware(Session session, Settings settings) throws FirmwareFault {
    conversation = session.converse(settings);
    shadow = new Reference(settings);
  }

  @Override
  public void powerUp() {
    tell(Tick.restart(true));
  }

  @Override
  public void step(int nowMillis, Readings readings, Commands commands) {
    tell(Tick.step(nowMillis, readings));
    for (CommandField field : CommandField.values()) {
      field.set(commands, last[field.ordinal()]);
    }
  }

  @Override
  public boolean keyInSetPoint(double setPointC) {
    int centiC = (int) StrictMath.round(setPointC * 100);
    tell(Tick.setting(Setting.HEAT_SET_POINT_CENTI_C, centiC));
    return fault == null;
  }

  private void tell(Tick tick) {
    if (fault != null) {
      return;
    }
    try {
      int[] got = conversation.tell(tick);
      int[] expected = CommandField.values(shadow.play(tick));
      if (got != null) {
        boolean[] reported = conversation.reported();
        for (int i = 0; i < got.length; i++) {
          last[i] = reported[i] ? got[i] : expected[i];
        }
        if (difference == null && !java.util.Arrays.equals(last, expected)) {
          difference = new Difference(entries, tick, expected, last.clone(), reported);
        }
      }
      entries++;
    } catch (FirmwareFault f) {
      fault = f;
      failedOff = conversation.watch();
      if (failedOff) {
        for (CommandField field : CommandField.values()) {
          if (field.output()) {
            last[field.ordinal()] = 0;
          }
        }
      }
    }
  }

  long entries() {
    return entries;
  }

  Difference difference() {
    return difference;
  }

  FirmwareFault fault() {
    return fault;
  }

  Boolean failedOff() {
    return failedOff;
  }
}
