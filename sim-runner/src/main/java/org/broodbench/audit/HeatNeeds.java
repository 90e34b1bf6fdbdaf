package org.broodbench.audit;

import org.broodbench.rig.Scenario;

/**
 * Heat that a set point asks for in the weather of a season; of the controller it knows that alone.
 *
 * @param setPointC the set point, °C
 * @param week at the mean of the worst week
 * @param coldest at its coldest moment
 * @param month at the mean of the darkest month
 */
record HeatNeeds(double setPointC, HeatNeed week, HeatNeed coldest, HeatNeed month) {
  static HeatNeeds of(Scenario s, Season season) {
    double setPointC = HeatNeed.setPointC(s);
    Season.Stretch w = season.worstWeek();
    Season.Stretch m = season.darkestMonth();
    return new HeatNeeds(
        setPointC,
        HeatNeed.at(s, setPointC, w.meanAirC(), w),
        HeatNeed.at(s, setPointC, w.minAirC(), w),
        HeatNeed.at(s, setPointC, m.meanAirC(), m));
  }
}
