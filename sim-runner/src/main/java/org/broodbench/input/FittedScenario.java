package org.broodbench.input;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.broodbench.calibrate.Calibration;
import org.broodbench.calibrate.Knob;
import org.broodbench.rig.Scenario;

/** A scenario's text with the values that a log told, and where each comes from. */
public final class FittedScenario {
  private FittedScenario() {}

  private record Change(String path, String value, String origin) {}

  /**
   * The text with fitted values, each with its origin beside it.
   *
   * @param text the scenario's text
   * @param settings of the command line, which hold here too
   */
  public static String text(String text, List<String> settings, Calibration c) {
    StringBuilder head = new StringBuilder();
    head.append("# Fitted to the log ").append(c.logName()).append(", ");
    head.append(c.log().rows()).append(" rows. Beside each value of it: its 90 % interval,\n");
    head.append("# what stood there before, and whether the log told it.\n");
    if (!c.fits()) {
      head.append("# THE LOG DOES NOT LOOK LIKE THIS HIVE: do not rely on these values.\n");
    }
    Edit edit = new Edit(text);
    for (String setting : settings) {
      int equals = setting.indexOf('=');
      String path = setting.substring(0, equals).strip();
      edit.set(
          new Change(path, setting.substring(equals + 1).strip(), "set on the command line"), head);
    }
    Values values = ScenarioText.read(edit.keys, "", text, settings).values();
    List<String> untold = new ArrayList<>();
    for (Calibration.Parameter p : c.parameters()) {
      if (!p.told()) {
        untold.add(p.knob().key());
        edit.believed(p, c.scenario(), values);
        continue;
      }
      changes(c.scenario(), values, p).forEach(change -> edit.set(change, head));
    }
    if (!untold.isEmpty()) {
      head.append("# Not told by this log, left as believed: ");
      head.append(String.join(", ", untold)).append(".\n");
    }
    return head.append("\n").append(edit.text()).toString();
  }

  /** A text while it is edited: comments are put in last, since the editor lays lines anew. */
  private static final class Edit {
    final Keys keys = ScenarioKeys.all();
    private final ScenarioEditor editor = new ScenarioEditor(keys);
    private final List<Change> done = new ArrayList<>();
    private String text;

    Edit(String text) {
      this.text = text;
    }

    void set(Change change, StringBuilder head) {
      try {
        text = editor.set(text, change.path(), change.value());
        done.removeIf(d -> d.path().equals(change.path()));
        done.add(change);
      } catch (BadInput e) {
        head.append("# To be set by hand: ")
            .append(change.path())
            .append(" = ")
            .append(change.value())
            .append(": ")
            .append(change.origin())
            .append('\n');
      }
    }

    /** A value that stays is marked where it stands in the text. */
    void believed(Calibration.Parameter p, Scenario s, Values values) {
      for (Change c : changes(s, values, p)) {
        if (done.stream().noneMatch(d -> d.path().equals(c.path()))) {
          done.add(new Change(c.path(), null, "as believed; the log does not tell it"));
        }
      }
    }

    String text() {
      List<String> lines = new ArrayList<>(List.of(text.split("\n", -1)));
      Map<String, RawScenario.Raw> found = TomlSource.read(keys, "", text).values();
      for (Change c : done) {
        RawScenario.Raw raw = found.get(c.path());
        if (raw != null) {
          int line = raw.place().line() - 1;
          lines.set(line, beside(lines.get(line), raw.place().column() - 1, c.origin()));
        }
      }
      return String.join("\n", lines);
    }
  }

  /** A line with a comment more behind its value, which begins at a column. */
  static String beside(String line, int valueColumn, String comment) {
    String kept = line.stripTrailing();
    char quote = valueColumn < kept.length() ? kept.charAt(valueColumn) : ' ';
    boolean quoted = quote == '"' || quote == '\'';
    int end = quoted ? kept.indexOf(quote, valueColumn + 1) : valueColumn;
    boolean commented = kept.indexOf('#', Math.max(0, end)) >= 0;
    return kept + (commented ? "; " : "  # ") + comment;
  }

  /** A value by its factor on what stands in the scenario, with its interval and its past. */
  private static Change scaled(
      String path, Calibration.Parameter p, double before, String unit, String of) {
    double scale = p.before() == 0 ? 1 : before / p.before();
    String sign = unit.isEmpty() ? "" : " " + unit;
    return new Change(
        path,
        num(p.value() * scale) + sign,
        String.format(
            Locale.ROOT,
            "told by the log: 90 %% between %.4g and %.4g%s, before %.4g%s",
            p.low() * scale,
            p.high() * scale,
            sign,
            before,
            of));
  }

  private static List<Change> changes(Scenario s, Values v, Calibration.Parameter p) {
    Knob k = p.knob();
    String key = k.scenarioKey();
    double strings = v.integer("battery.strings");
    List<Change> out = new ArrayList<>();
    switch (k) {
      case HIVE_LOSS, CLUSTER_LOSS -> out.add(scaled(key, p, p.before(), "", ""));
      case AIR_LEAKAGE -> out.add(share(scaled(key, p, p.before(), "", "")));
      case SOLAR_GAIN -> {
        out.add(share(scaled(key, p, s.hive().wallSkin().solarAbsorptance(), "", "")));
        double lid = s.hive().lidSkin().solarAbsorptance();
        out.add(share(scaled("hive.lid_absorptance", p, lid, "", ", as the walls")));
      }
      case PAN_HEAT -> out.add(scaled(key, p, v.number(key), "J/(kg K)", ""));
      case STORES -> {
        String of = s.hive().boxes().size() > 1 ? ", in proportion in all boxes" : "";
        for (int b = 0; b < s.hive().boxes().size(); b++) {
          double kg = s.hive().boxes().get(b).storesKg();
          out.add(scaled("hive.box." + b + ".stores", p, kg, "kg", of));
        }
      }
      case HEATER_POWER -> out.add(scaled(key, p, p.before(), "W", ""));
      case PANEL_FACTOR -> {
        String of = s.pv().groups().size() > 1 ? ", in proportion in all groups" : "";
        for (int g = 0; g < s.pv().groups().size(); g++) {
          double watts = s.pv().groups().get(g).powerW();
          out.add(scaled("pv.group." + g + ".power", p, watts, "W", of));
        }
      }
      case COLONY_BEES -> {
        Change c = scaled(key, p, p.before(), "", "");
        out.add(new Change(key, String.valueOf(Math.round(p.value())), c.origin()));
      }
      case BATTERY_CAPACITY -> out.add(scaled(key, p, p.before() / strings, "Ah", ""));
      case BATTERY_RESISTANCE -> {
        double bank = s.battery().resistanceOhm() * 1000 * strings;
        double leads = s.wiring().batteryLeadOhm() * 1000;
        String of = ", battery and leads in proportion";
        out.add(scaled(key, p, bank, "mOhm", of));
        out.add(scaled("wiring.battery_lead", p, leads, "mOhm", of));
      }
      default -> {}
    }
    return out;
  }

  /** A share is at most one. */
  private static Change share(Change c) {
    return Double.parseDouble(c.value()) > 1 ? new Change(c.path(), "1", c.origin()) : c;
  }

  private static String num(double v) {
    return String.format(Locale.ROOT, "%.4f", v).replaceFirst("0+$", "").replaceFirst("\\.$", "");
  }
}
