package org.broodbench.output;

import java.util.ArrayList;
import java.util.List;
import org.broodbench.loop.Trace;

/**
 * One chart of the report.
 *
 * @param id name in the page
 * @param title heading
 * @param lead what to look for, in a sentence
 * @param heightPx height of the drawing
 * @param axis what stands at the left scale
 * @param banded whether the brood band is shaded
 * @param lines its lines, drawn in this order
 */
record ChartPlan(
    String id,
    String title,
    String lead,
    int heightPx,
    String axis,
    boolean banded,
    List<Line> lines) {

  /** All charts for a trace; lines of parts that the rig does not have are left out. */
  static List<ChartPlan> all(Trace trace) {
    List<ChartPlan> all =
        List.of(
            new ChartPlan(
                "brood",
                "Brood nest",
                "The comb itself, what the probe reported, and the set point that the controller"
                    + " worked to. The shaded stripe is the band that the brood needs.",
                270,
                "temperature",
                true,
                List.of(
                    Line.temperature(
                        "set_point_c", "Set point at work", "set", Line.Draw.STEP, 1, 20),
                    Line.temperature("probe_b_c", "Probe B", "probe-b", Line.Draw.LINE, 1, 20),
                    Line.temperature("probe_a_c", "Probe A", "probe-a", Line.Draw.LINE, 1, 20),
                    Line.temperature(
                        "brood_c", "Brood comb, true", "brood", Line.Draw.LINE, 1, 50))),
            new ChartPlan(
                "around",
                "Thermal mass, box air, outdoors",
                "Where the warmth came from and what it stood against.",
                210,
                "temperature",
                false,
                List.of(
                    Line.temperature("outdoor_c", "Outdoors", "outdoor", Line.Draw.LINE, 1, 20),
                    Line.temperature(
                        "box_air_c", "Air in the brood box", "box", Line.Draw.LINE, 1, 20),
                    Line.temperature("pan_c", "Thermal mass", "pan", Line.Draw.LINE, 1, 20))),
            new ChartPlan(
                "switches",
                "Heater, fan and shed level",
                "Full height is on. While more than three days are shown, height is the share of"
                    + " each hour.",
                150,
                "",
                false,
                List.of(
                    Line.of("heater_on", "Heater", "", 1, 2, "heater", Line.Draw.STRIP, 1),
                    Line.of("fan_on", "Fan", "", 1, 2, "fan", Line.Draw.STRIP, 1),
                    Line.of("shed_level", "Shed level", "", 1, 1, "shed", Line.Draw.STRIP, 1))),
            new ChartPlan(
                "battery",
                "Battery",
                "State of charge on the left scale, volts on the right one.",
                210,
                "%",
                false,
                List.of(
                    Line.of("battery_v", "Volts", "V", 1, 2, "volts", Line.Draw.RIGHT, 500),
                    Line.of("soc", "State of charge", "%", 100, 1, "soc", Line.Draw.LINE, 1000))),
            new ChartPlan(
                "power",
                "Power",
                "What the panel gave, what all loads took, and the heater's part of it.",
                200,
                "W",
                false,
                List.of(
                    Line.of("load_w", "All loads", "W", 1, 1, "load", Line.Draw.MEAN, 10),
                    Line.of("heater_w", "Heater", "W", 1, 1, "heater", Line.Draw.MEAN, 10),
                    Line.of("pv_w", "Panel", "W", 1, 1, "pv", Line.Draw.MEAN, 10))),
            new ChartPlan(
                "humidity",
                "Humidity between the brood combs",
                "Relative humidity at the comb's own temperature.",
                160,
                "%",
                false,
                List.of(
                    Line.of("brood_rh_percent", "Humidity", "%", 1, 0, "rh", Line.Draw.LINE, 5))),
            new ChartPlan(
                "co2",
                "Carbon dioxide between the brood combs",
                "Share of the air's volume; fresh air has 0.04 %.",
                160,
                "%",
                false,
                List.of(
                    Line.of(
                        "co2_percent", "Carbon dioxide", "%", 1, 2, "co2", Line.Draw.LINE, 200))));
    List<ChartPlan> drawn = new ArrayList<>();
    for (ChartPlan c : all) {
      List<Line> there = c.lines.stream().filter(l -> hasValues(trace, l.column())).toList();
      if (!there.isEmpty()) {
        drawn.add(new ChartPlan(c.id, c.title, c.lead, c.heightPx, c.axis, c.banded, there));
      }
    }
    return drawn;
  }

  private static boolean hasValues(Trace trace, String column) {
    int c = Trace.COLUMNS.indexOf(column);
    for (int r = 0; r < trace.rows(); r++) {
      if (!Double.isNaN(trace.value(c, r))) {
        return true;
      }
    }
    return false;
  }
}
