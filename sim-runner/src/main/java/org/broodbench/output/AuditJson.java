package org.broodbench.output;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.broodbench.audit.AuditReport;
import org.broodbench.audit.Budget;
import org.broodbench.audit.CutOutLine;
import org.broodbench.audit.Finding;
import org.broodbench.audit.LoadLine;

/** A rig on paper as JSON, format {@code broodbench-audit/1}. */
public final class AuditJson {
  private AuditJson() {}

  /** The whole text. */
  public static String of(AuditReport r) {
    return JsonText.object(
        json -> {
          json.text("format", "broodbench-audit/1").whole("stops", r.stops());
          List<JsonText.Body> findings = new ArrayList<>();
          for (Finding f : r.findings()) {
            findings.add(
                j ->
                    j.text("id", f.id())
                        .text("severity", f.severity().word())
                        .text("title", f.title())
                        .text("arithmetic", f.arithmetic())
                        .text("remedy", f.remedy())
                        .texts("set", f.set())
                        .text("source", f.source()));
          }
          json.objects("findings", findings);
          List<JsonText.Body> loads = new ArrayList<>();
          for (LoadLine l : r.loads()) {
            loads.add(
                j ->
                    j.text("name", l.name())
                        .number("volts", l.volts())
                        .number("power_w", l.powerW())
                        .number("current_a", l.currentA()));
          }
          json.objects("loads", loads);
          List<JsonText.Body> cutOuts = new ArrayList<>();
          for (CutOutLine c : r.cutOuts()) {
            cutOuts.add(
                j ->
                    j.text("name", c.name())
                        .text("trips", c.trips())
                        .text("reconnects", c.reconnects())
                        .text("returns_by_itself", c.returns().name().toLowerCase(Locale.ROOT)));
          }
          json.objects("cut_outs", cutOuts);
          json.object("darkest_month", budget(r.month()));
          json.object("worst_week", budget(r.week()));
        });
  }

  private static JsonText.Body budget(Budget b) {
    return json -> {
      json.text("weather", b.stretch()).whole("days", b.days());
      List<JsonText.Body> takes = new ArrayList<>();
      for (Budget.Take t : b.takes()) {
        takes.add(
            j ->
                j.text("name", t.name())
                    .number("wh_day", t.whDay())
                    .text("arithmetic", t.arithmetic()));
      }
      json.objects("takes", takes)
          .number("takes_least_wh_day", b.leastWh())
          .number("takes_wh_day", b.ownWh())
          .number("takes_most_wh_day", b.mostWh())
          .number("panel_wh_day", b.panelWh())
          .number("shore_wh_day", b.shoreWh())
          .text("gives", b.gives());
    };
  }
}
