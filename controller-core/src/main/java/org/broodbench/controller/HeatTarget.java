package org.broodbench.controller;

/** The target of the set point for the shed level in force (rules H1, H8 to H10). Owns no state. */
final class HeatTarget {
  private final int setPointCentiC;
  private final int setBackCentiK;
  private final int survivalCentiC;
  private final int soakCentiK;
  private final int fallbackCentiC;

  private int broodCentiC;
  private int panCentiC;

  HeatTarget(Settings settings) {
    setPointCentiC = settings.get(Setting.HEAT_SET_POINT_CENTI_C);
    setBackCentiK = settings.get(Setting.HEAT_SET_BACK_CENTI_K);
    survivalCentiC = settings.get(Setting.HEAT_SURVIVAL_CENTI_C);
    soakCentiK = settings.get(Setting.HEAT_SOAK_CENTI_K);
    fallbackCentiC = settings.get(Setting.FALLBACK_PAN_CENTI_C);
  }

  /**
   * @param level shed level as far as it restricts the loads
   */
  void step(int level, boolean chargerFull) {
    if (level >= ShedLevel.SURVIVAL) {
      broodCentiC = survivalCentiC;
      panCentiC = fallbackCentiC < survivalCentiC ? fallbackCentiC : survivalCentiC;
    } else if (level == ShedLevel.SET_BACK) {
      int lowered = setPointCentiC - setBackCentiK;
      broodCentiC = lowered > survivalCentiC ? lowered : survivalCentiC;
      panCentiC = fallbackCentiC - setBackCentiK;
    } else {
      broodCentiC = chargerFull ? setPointCentiC + soakCentiK : setPointCentiC;
      panCentiC = fallbackCentiC;
    }
  }

  int broodCentiC() {
    return broodCentiC;
  }

  int panCentiC() {
    return panCentiC;
  }
}
