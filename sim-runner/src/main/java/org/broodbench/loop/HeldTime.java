package org.broodbench.loop;

import org.broodbench.controller.Commands;
import org.broodbench.controller.Reason;
import org.broodbench.controller.Setting;
import org.broodbench.controller.Settings;

/**
 * What is left of the time for which the heater is held as it is. The core tells minimum on and off
 * and the service hold; the wait for a start (rule R5) and the pause of a share (rule G1) follow
 * from when the heater was switched.
 */
final class HeldTime {
  private static final double HOUR_S = 3600;

  private final double[] startedAtS;
  private final double effectPauseS;
  private final double blindPauseS;
  private int starts;
  private boolean on;
  private double offAtS;

  HeldTime(Settings settings) {
    startedAtS = new double[settings.get(Setting.RELAY_STARTS_PER_HOUR)];
    effectPauseS =
        (settings.get(Setting.EFFECT_SHARE_WINDOW_MILLIS)
                - settings.get(Setting.EFFECT_SHARE_ON_MILLIS))
            * 1e-3;
    blindPauseS =
        (settings.get(Setting.SHED_BLIND_WINDOW_MILLIS)
                - settings.get(Setting.SHED_BLIND_ON_MILLIS))
            * 1e-3;
  }

  /** The heater stands so from now on. */
  void heater(double atS, boolean nowOn) {
    if (nowOn && !on) {
      startedAtS[starts++ % startedAtS.length] = atS;
    } else if (!nowOn && on) {
      offAtS = atS;
    }
    on = nowOn;
  }

  /** What is left, s; 0 where none is known. */
  double leftS(double atS, Commands c) {
    double leftS =
        switch (c.heaterReason) {
          case Reason.MIN_OFF -> c.minOffRemainingMillis * 1e-3;
          case Reason.MIN_ON -> c.minOnRemainingMillis * 1e-3;
          case Reason.SERVICE -> c.serviceRemainingMillis * 1e-3;
          // the oldest of as many starts as an hour may have is the next to leave it
          case Reason.STARTS -> startedAtS[starts % startedAtS.length] + HOUR_S - atS;
          case Reason.EFFECT -> offAtS + effectPauseS - atS;
          case Reason.BLIND -> offAtS + blindPauseS - atS;
          default -> 0;
        };
    return Math.max(0, leftS);
  }
}
