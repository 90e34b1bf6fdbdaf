package org.broodbench.stress;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.broodbench.controller.Alarm;
import org.broodbench.rig.Requirement;
import org.broodbench.rig.Scenario;

/**
 * One fault, or two, in one week.
 *
 * @param fault name; of two, joined by a plus
 * @param title in words
 * @param week which week
 * @param met whether every requirement holds in that week
 * @param holds requirements that hold
 * @param missed requirements that do not
 * @param firstFails what fails first that does not fail without the fault; null for nothing
 * @param hoursToFirst hours from the onset; not a number for nothing
 * @param hoursToHarm hours from the onset to harm; not a number for none
 * @param hoursToHarmWithout the same without the fault
 * @param alarm the first alarm that the fault raised; null for none
 * @param hoursToAlarm hours from the onset; not a number for none
 * @param sees what tells the keeper at the first visit; empty for nothing
 * @param inTime whether that is before harm; null where there is no harm
 * @param gauge the display at the visit
 * @param carry what to carry against it
 * @param figures figures of the week
 * @param loss heat loss of small clusters that the week was run at, with the fault and without
 */
public record StressRow(
    String fault,
    String title,
    String week,
    boolean met,
    List<String> holds,
    List<String> missed,
    Failing firstFails,
    double hoursToFirst,
    double hoursToHarm,
    double hoursToHarmWithout,
    String alarm,
    double hoursToAlarm,
    List<String> sees,
    Boolean inTime,
    Gauge gauge,
    String carry,
    Figures figures,
    HeatLoss loss) {

  /**
   * Figures of the week.
   *
   * @param inBandPercent share of hours with the brood comb in band
   * @param inBandWithoutPercent the same without the fault
   * @param broodLowC lowest of the brood comb, °C
   * @param broodHighC highest, °C
   * @param lowestSocPercent lowest state of charge
   * @param heaterWh heat of the element
   * @param beesEnd adults alive at the end
   */
  public record Figures(
      double inBandPercent,
      double inBandWithoutPercent,
      double broodLowC,
      double broodHighC,
      double lowestSocPercent,
      double heaterWh,
      double beesEnd) {}

  /** What happens so much earlier than without the fault is the fault's doing, s; own choice. */
  private static final double SOONER_S = 3600;

  // what a keeper notices at a glance beside the notes of the days before; own choices
  private static final double NOTICED_K = 2;
  private static final double NOTICED_V = 0.3;
  private static final double NOTICED_H = 1;
  private static final double NOTICED_SHARE = 0.3;

  /** Puts a row together from a run and from the same week without a fault. */
  static StressRow of(
      StressWeek week, List<StressCase> cases, HeatLoss loss, Shot shot, Shot without) {
    Scenario s = week.scenario();
    List<String> holds = new ArrayList<>();
    List<String> missed = new ArrayList<>();
    for (int i = 0; i < s.requirements().size(); i++) {
      Requirement r = s.requirements().get(i);
      double value = shot.values().get(i);
      boolean held = Double.isNaN(value) || r.kind().met(value, r.limit());
      (held ? holds : missed).add(r.kind().key());
    }
    int failing = firstNew(shot.failedAtS(), without.failedAtS());
    int alarm = firstNew(shot.alarmAtS(), without.alarmAtS());
    List<String> sees = sees(cases, shot.gauge(), without.gauge());
    boolean harmed = !Double.isNaN(shot.harmAtS());
    return new StressRow(
        joined(cases.stream().map(StressCase::key).toList(), StressPlan.AND),
        joined(cases.stream().map(StressCase::title).toList(), " and "),
        week.label(),
        missed.isEmpty(),
        List.copyOf(holds),
        List.copyOf(missed),
        failing < 0 ? null : Failing.values()[failing],
        failing < 0 ? Double.NaN : shot.failedAtS().get(failing) / 3600,
        shot.harmAtS() / 3600,
        without.harmAtS() / 3600,
        alarm < 0 ? null : Alarm.name(alarm),
        alarm < 0 ? Double.NaN : shot.alarmAtS().get(alarm) / 3600,
        sees,
        harmed ? !sees.isEmpty() && shot.harmAtS() > s.run().visitEveryS() : null,
        shot.gauge(),
        joined(cases.stream().map(StressCase::carry).distinct().toList(), "; "),
        new Figures(
            shot.figures().inBandPercent(),
            without.figures().inBandPercent(),
            shot.figures().broodLowC(),
            shot.figures().broodHighC(),
            shot.figures().lowestSocPercent(),
            shot.figures().heaterWh(),
            shot.figures().beesEnd()),
        loss);
  }

  private static String joined(List<String> words, String by) {
    return String.join(by, words);
  }

  /** The earliest of some times that is not there, or much later, without the fault; or −1. */
  private static int firstNew(List<Double> atS, List<Double> withoutAtS) {
    int first = -1;
    for (int i = 0; i < atS.size(); i++) {
      double t = atS.get(i);
      boolean before = withoutAtS.get(i) <= t + SOONER_S;
      if (!Double.isNaN(t) && !before && (first < 0 || t < atS.get(first))) {
        first = i;
      }
    }
    return first;
  }

  private static List<String> sees(List<StressCase> cases, Gauge g, Gauge usual) {
    List<String> sees = new ArrayList<>();
    for (StressCase c : cases) {
      if (c.plain()) {
        sees.add("the " + c.title() + ", by eye");
      }
    }
    if (g.dark()) {
      sees.add("the display is dark");
      return sees;
    }
    int lit = g.alarms() & ~usual.alarms();
    for (int bit = 0; bit < Alarm.COUNT; bit++) {
      if ((lit >> bit & 1) != 0) {
        sees.add("alarm " + Alarm.name(bit));
      }
    }
    if (differs(g.broodC(), usual.broodC(), NOTICED_K)) {
      sees.add("brood " + shown(g.broodC(), "°C") + ", usual " + shown(usual.broodC(), "°C"));
    }
    if (differs(g.volts(), usual.volts(), NOTICED_V)) {
      sees.add(shown(g.volts(), "V") + ", usual " + shown(usual.volts(), "V"));
    }
    double much = Math.max(NOTICED_H, NOTICED_SHARE * usual.heaterH());
    if (differs(g.heaterH(), usual.heaterH(), much)) {
      sees.add(shown(g.heaterH(), "h") + " of heat, usual " + shown(usual.heaterH(), "h"));
    }
    return sees;
  }

  private static boolean differs(double value, double usual, double by) {
    return Double.isNaN(value) != Double.isNaN(usual) || Math.abs(value - usual) >= by;
  }

  private static String shown(double value, String unit) {
    return Double.isNaN(value) ? "none" : String.format(Locale.ROOT, "%.1f %s", value, unit);
  }
}
