package org.broodbench.input;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.broodbench.calibrate.Calibration;
import org.broodbench.calibrate.Knob;
import org.broodbench.rig.Scenario;

/** A scenario's text with the values that a log told, and where each comes from. */
public final class FittedScenario {
  private FittedScenario() {}

  private record Change(String path, String value, String origin) {}

  /**
   * The text with fitted values.
   *
   * @param text the scenario's text
   */
  public static String text(String text, Calibration c) {
    StringBuilder head = new StringBuilder();
    head.append("# Values told by the log ").append(c.logName()).append(", ");
    head.append(c.log().rows())
        .append(" rows. Best value, 90 % interval, what stood here before.\n");
    if (!c.fits()) {
      head.append("# THE LOG DOES NOT LOOK LIKE THIS HIVE: do not rely on these values.\n");
    }
    String changed = text;
    Keys keys = ScenarioKeys.all();
    ScenarioEditor editor = new ScenarioEditor(keys);
    Values values = ScenarioText.read(keys, "", text, List.of()).values();
    for (Calibration.Parameter p : c.parameters()) {
      for (Change change : changes(c.scenario(), values, p)) {
        String line =
            String.format(
                Locale.ROOT, "# %s = %s: %s%n", change.path(), change.value(), change.origin());
        if (!p.told()) {
          head.append("# not told, left as it was: ").append(p.knob().key()).append('\n');
          break;
        }
        try {
          changed = editor.set(changed, change.path(), change.value());
          head.append(line);
        } catch (BadInput e) {
          head.append("# could not be set, by hand: ").append(line.substring(2));
        }
      }
    }
    return head.append("\n").append(changed).toString();
  }

  private static List<Change> changes(Scenario s, Values v, Calibration.Parameter p) {
    Knob k = p.knob();
    long strings = v.integer("battery.strings");
    double ratio = p.before() == 0 ? 1 : p.value() / p.before();
    String origin =
        String.format(
            Locale.ROOT,
            "%.4g %s (%.4g to %.4g), was %.4g",
            p.value(),
            k.unit(),
            p.low(),
            p.high(),
            p.before());
    List<Change> out = new ArrayList<>();
    switch (k) {
      case HIVE_LOSS, CLUSTER_LOSS -> out.add(new Change(k.scenarioKey(), num(p.value()), origin));
      case AIR_LEAKAGE -> out.add(new Change(k.scenarioKey(), num(Math.min(1, p.value())), origin));
      case SOLAR_GAIN -> {
        out.add(new Change(k.scenarioKey(), num(Math.min(1, p.value())), origin));
        double lid = Math.min(1, s.hive().lidSkin().solarAbsorptance() * ratio);
        out.add(new Change("hive.lid_absorptance", num(lid), origin));
      }
      case PAN_HEAT ->
          out.add(
              new Change(
                  k.scenarioKey(), num(v.number(k.scenarioKey()) * ratio) + " J/(kg K)", origin));
      case STORES -> {
        for (int b = 0; b < s.hive().boxes().size(); b++) {
          double kg = s.hive().boxes().get(b).storesKg() * ratio;
          out.add(new Change("hive.box." + b + ".stores", num(kg) + " kg", origin));
        }
      }
      case HEATER_POWER -> out.add(new Change(k.scenarioKey(), num(p.value()) + " W", origin));
      case PANEL_FACTOR -> {
        for (int g = 0; g < s.pv().groups().size(); g++) {
          double watts = s.pv().groups().get(g).powerW() * ratio;
          out.add(new Change("pv.group." + g + ".power", num(watts) + " W", origin));
        }
      }
      case COLONY_BEES ->
          out.add(new Change(k.scenarioKey(), String.valueOf(Math.round(p.value())), origin));
      case BATTERY_CAPACITY ->
          out.add(new Change(k.scenarioKey(), num(p.value() / strings) + " Ah", origin));
      case BATTERY_RESISTANCE -> {
        double bank = s.battery().resistanceOhm() * ratio * 1000;
        out.add(new Change(k.scenarioKey(), num(bank * strings) + " mOhm", origin));
        double leads = s.wiring().batteryLeadOhm() * ratio * 1000;
        out.add(new Change("wiring.battery_lead", num(leads) + " mOhm", origin));
      }
      default -> {}
    }
    return out;
  }

  private static String num(double v) {
    return String.format(Locale.ROOT, "%.4f", v).replaceFirst("0+$", "").replaceFirst("\\.$", "");
  }
}
