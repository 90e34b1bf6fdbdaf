package org.broodbench.study;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.broodbench.loop.RunResult;
import org.broodbench.rig.Requirement;

/** What is wrong with a run, seen from what could mend it. */
enum Need {
  /** The brood is too cold. */
  WARMTH,
  /** The brood is too hot. */
  COOLING,
  /** The battery is too low, or the controller spared it. */
  CHARGE,
  /** The heater is switched too often or too briefly. */
  CALM,
  /** The air at the brood is too dry. */
  MOISTURE,
  /** Water condenses for too long. */
  DRYNESS,
  /** Carbon dioxide piles up. */
  FRESH_AIR,
  /** What bees touch above the heater gets too hot. */
  COOL_PAN;

  /** Below this share of all kelvin-hours out of band the other side alone is looked at. */
  private static final double MINOR = 0.1;

  /** The needs behind missed requirements, as one run shows them. */
  static Set<Need> of(List<Requirement> missed, RunResult r) {
    Set<Need> needs = EnumSet.noneOf(Need.class);
    for (Requirement q : missed) {
      switch (q.kind()) {
        case BROOD_IN_BAND -> {
          double below = r.brood().degreeHoursBelow();
          double above = r.brood().degreeHoursAbove();
          if (below > MINOR * (below + above)) {
            needs.add(WARMTH);
          }
          if (above > MINOR * (below + above)) {
            needs.add(COOLING);
          }
        }
        case HIGHEST_BROOD -> needs.add(COOLING);
        case LOWEST_SOC, HOURS_SHED -> needs.add(CHARGE);
        case SHORTEST_OFF, SHORTEST_ON, STARTS_PER_DAY -> needs.add(CALM);
        case LOWEST_HUMIDITY -> needs.add(MOISTURE);
        case HOURS_CONDENSING -> needs.add(DRYNESS);
        case HIGHEST_CO2 -> needs.add(FRESH_AIR);
        case HIGHEST_PAN -> needs.add(COOL_PAN);
      }
    }
    boolean spared = r.sheds() > 0 || r.battery().wentDead();
    spared |= r.worst() != null && r.worst().shedLevel() > 0;
    if (needs.contains(WARMTH) && spared) {
      needs.add(CHARGE);
    }
    return needs;
  }
}
