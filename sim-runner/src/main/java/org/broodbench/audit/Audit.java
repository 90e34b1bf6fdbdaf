package org.broodbench.audit;

import java.util.ArrayList;
import java.util.List;
import org.broodbench.power.LoadSpec;
import org.broodbench.rig.Scenario;

/** Judges a rig on paper: arithmetic alone, nothing is simulated and no file is read. */
public final class Audit {
  private Audit() {}

  /**
   * The whole audit.
   *
   * @param s the rig
   * @param season the weather that it is judged by, with the light on this rig's own module groups
   */
  public static AuditReport of(Scenario s, Season season) {
    return of(new Facts(s, season));
  }

  static AuditReport of(Facts f) {
    Findings out = new Findings();
    CutOuts cutOuts = new CutOuts(f, out);
    new EnergyChecks(f, out).run();
    new HeatChecks(f, out).run();
    new WiringChecks(f, out).run();
    new SurfaceChecks(f, out).run();
    new ShedChecks(f, out).run();
    cutOuts.run();
    new BatteryChecks(f, out).run();
    new BeeChecks(f, out).run();
    return new AuditReport(out.sorted(), loads(f), cutOuts.lines(), f.monthBudget, f.weekBudget);
  }

  private static List<LoadLine> loads(Facts f) {
    Scenario s = f.s;
    Supply p = f.supply;
    List<LoadLine> lines = new ArrayList<>();
    for (double at12V : new double[] {11.5, 12.2, 13.2, 14.4}) {
      double v = at12V * p.scale();
      if (f.heats()) {
        line(lines, "heater", v, p.heaterInputW(v));
      }
      if (s.fan().powerW() > 0) {
        line(lines, "fan", v, s.fan().powerW());
      }
      line(lines, "controllers", v, s.controller().powerW() + s.pv().controllerPowerW());
      if (p.inverterUsed()) {
        line(lines, "inverter idle", v, p.idleW());
      }
      for (LoadSpec l : s.loads()) {
        line(lines, l.name(), v, p.loadInputW(l));
      }
    }
    return lines;
  }

  private static void line(List<LoadLine> lines, String name, double volts, double powerW) {
    lines.add(new LoadLine(name, volts, powerW, powerW / volts));
  }
}
