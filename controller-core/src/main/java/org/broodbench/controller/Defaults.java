package org.broodbench.controller;

import static org.broodbench.controller.Setting.*;

/**
 * The defaults that differ from {@link Setting}'s own: by place of the probe and by chemistry.
 * Trade judgement; sources in SPEC.md.
 */
final class Defaults {
  private Defaults() {}

  static void put(int[] values, ProbePlace place, Chemistry chemistry) {
    for (Setting setting : Setting.values()) {
      values[setting.ordinal()] = setting.base();
    }
    if (place == ProbePlace.NEST_EDGE) {
      place(values, 2200, 1800, 3000, 3200, 3000, 1800, 3400);
    } else if (place == ProbePlace.BOX_AIR) {
      place(values, 2000, 1500, 2800, 3000, 2800, 1200, 3400);
    }
    if (chemistry == Chemistry.LITHIUM_IRON_PHOSPHATE) {
      values[SHED_BY_STATE_OF_CHARGE.ordinal()] = 1;
      values[FITTED_STATE_OF_CHARGE.ordinal()] = 1;
      values[SHED_EMERGENCY_MILLI_V.ordinal()] = 12000;
    }
  }

  private static void place(
      int[] values,
      int setPointCentiC,
      int survivalCentiC,
      int limitCentiC,
      int fanOnCentiC,
      int fanOffCentiC,
      int alarmLowCentiC,
      int alarmHighCentiC) {
    values[HEAT_SET_POINT_CENTI_C.ordinal()] = setPointCentiC;
    values[HEAT_SURVIVAL_CENTI_C.ordinal()] = survivalCentiC;
    values[LIMIT_BROOD_CENTI_C.ordinal()] = limitCentiC;
    values[LIMIT_BROOD_B_CENTI_C.ordinal()] = limitCentiC;
    values[FAN_ON_CENTI_C.ordinal()] = fanOnCentiC;
    values[FAN_OFF_CENTI_C.ordinal()] = fanOffCentiC;
    values[ALARM_BROOD_LOW_CENTI_C.ordinal()] = alarmLowCentiC;
    values[ALARM_BROOD_HIGH_CENTI_C.ordinal()] = alarmHighCentiC;
  }
}
