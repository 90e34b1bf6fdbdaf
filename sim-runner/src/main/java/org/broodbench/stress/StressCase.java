package org.broodbench.stress;

import java.util.ArrayList;
import java.util.List;
import org.broodbench.rig.FaultKind;
import org.broodbench.rig.Scenario;

/**
 * One thing that breaks, as a keeper thinks of it.
 *
 * @param key name in results
 * @param title in words
 * @param kind what breaks; null for nothing
 * @param size its size, a share or K; not a number where the kind has none
 * @param plain whether the keeper sees it without any gauge
 * @param carry what to carry against it
 */
public record StressCase(
    String key, String title, FaultKind kind, double size, boolean plain, String carry) {
  /** Nothing breaks. */
  static final StressCase NONE =
      new StressCase("none", "nothing breaks", null, Double.NaN, false, "nothing");

  /** The faults that a rig can have, in the order of where they sit. */
  public static List<StressCase> of(Scenario s) {
    List<StressCase> all = new ArrayList<>(all());
    all.removeIf(c -> !c.kind().appliesTo(s));
    return all;
  }

  /** Every fault that some rig can have, in that order. */
  public static List<StressCase> all() {
    List<StressCase> all = new ArrayList<>();
    probes(all);
    heater(all);
    supply(all);
    hive(all);
    controller(all);
    return all;
  }

  private static void hidden(List<StressCase> to, FaultKind kind, String title, String carry) {
    to.add(new StressCase(kind.key(), title, kind, kind.usualSize(), false, carry));
  }

  private static void plain(List<StressCase> to, FaultKind kind, String title, String carry) {
    to.add(new StressCase(kind.key(), title, kind, kind.usualSize(), true, carry));
  }

  private static void probes(List<StressCase> to) {
    String probe = "a spare probe with its lead";
    hidden(to, FaultKind.PROBE_OPEN, "brood probe open", probe);
    hidden(to, FaultKind.PROBE_SHORT, "brood probe short", probe);
    hidden(to, FaultKind.PROBE_STUCK, "brood probe stuck", probe);
    String check = "a thermometer to compare with, a spare probe";
    to.add(
        new StressCase(
            "probe_reads_low", "brood probe 3 K low", FaultKind.PROBE_OFFSET, -3, false, check));
    to.add(
        new StressCase(
            "probe_reads_high", "brood probe 3 K high", FaultKind.PROBE_OFFSET, 3, false, check));
    hidden(
        to, FaultKind.PROBES_SWAPPED, "two probes swapped", "labels or unlike plugs, fitted now");
    hidden(to, FaultKind.PROBE_WET, "brood probe wet", "grease for the plug, a spare probe");
    hidden(
        to, FaultKind.PROBE_FALLEN, "brood probe fallen out of the nest", "wire to fix the probe");
    hidden(to, FaultKind.PAN_PROBE_OPEN, "pan probe open", probe);
    hidden(to, FaultKind.OUTDOOR_PROBE_OPEN, "outdoor probe open", probe);
    hidden(to, FaultKind.HUMIDITY_WET, "humidity probe wet", "a dry spare, or patience");
    hidden(to, FaultKind.VOLTS_LOST, "battery volts not read", "a spare lead, a voltmeter");
  }

  private static void heater(List<StressCase> to) {
    hidden(
        to,
        FaultKind.RELAY_WELDED,
        "heater relay welded",
        "a spare relay; an isolation switch and a thermal cut-out, fitted now");
    hidden(to, FaultKind.RELAY_OPEN, "heater relay open", "a spare relay");
    hidden(to, FaultKind.ELEMENT_BURNT, "heater element burnt", "a spare heater");
    to.add(
        new StressCase(
            "element_half",
            "half the element burnt",
            FaultKind.ELEMENT_BURNT,
            0.5,
            false,
            "a spare heater"));
    hidden(to, FaultKind.HEATER_FUSE_BLOWN, "heater fuse blown", "spare fuses");
    hidden(to, FaultKind.FAN_JAMMED, "fan jammed", "a spare fan, a brush");
    hidden(to, FaultKind.FAN_STUCK_ON, "fan runs without end", "a spare switch for the fan");
  }

  private static void supply(List<StressCase> to) {
    plain(to, FaultKind.PANEL_COVERED, "panel under snow", "a soft broom");
    to.add(
        new StressCase(
            "panel_half_shaded",
            "panel half shaded",
            FaultKind.PANEL_COVERED,
            0.5,
            true,
            "a saw for the branch, or a longer cable"));
    hidden(to, FaultKind.STRING_LOST, "string of the panel lost", "plugs and crimps, a voltmeter");
    String charged = "a charged battery";
    hidden(to, FaultKind.BATTERY_AGED, "battery aged to 60 %", charged);
    hidden(to, FaultKind.CELL_LOST, "battery cell lost", charged);
    plain(to, FaultKind.BATTERY_GONE, "battery stolen", charged + "; a lock, fitted now");
    hidden(to, FaultKind.BATTERY_FUSE_BLOWN, "battery fuse blown", "spare fuses");
    hidden(
        to,
        FaultKind.INVERTER_TRIPPED,
        "inverter tripped for good",
        "a hand on its switch; a heater for direct current ends this");
    plain(to, FaultKind.SHORE_LOST, "shore power lost", charged);
  }

  private static void hive(List<StressCase> to) {
    plain(to, FaultKind.LID_OFF, "lid off", "a strap, fitted now");
    plain(to, FaultKind.ENTRANCE_BLOCKED, "entrance blocked", "a hooked wire");
    plain(
        to,
        FaultKind.TOPPLED,
        "hive toppled",
        "straps and pegs, fitted now; a second pair of hands");
    hidden(to, FaultKind.STORES_GONE, "stores gone", "dough or syrup, warm");
  }

  private static void controller(List<StressCase> to) {
    String spare = "a spare controller with these settings";
    hidden(
        to, FaultKind.CONTROLLER_RESETS, "controller resets every hour", spare + ", a capacitor");
    hidden(
        to,
        FaultKind.CONTROLLER_HANGS,
        "controller stopped, heater on",
        spare + "; a watchdog and a thermal cut-out, fitted now");
    hidden(to, FaultKind.CONTROLLER_DEAD, "controller dead, all off", spare);
  }
}
