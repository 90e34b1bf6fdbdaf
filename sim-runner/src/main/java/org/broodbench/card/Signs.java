package org.broodbench.card;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.broodbench.card.FieldCard.Sign;
import org.broodbench.controller.Setting;
import org.broodbench.controller.Settings;
import org.broodbench.rig.Scenario;

/**
 * Readings that are odd, and readings that call for a hand at once, with what to do. The margins
 * beyond what was simulated are own choices.
 */
final class Signs {
  private static final double VOLTS_MARGIN = 0.1;
  private static final double PROBE_MARGIN_K = 1;
  private static final double HOURS_MARGIN = 1.3;

  private Signs() {}

  static List<Sign> of(Scenario s, List<Expectation> sorts) {
    Settings set = s.controller().settings();
    Range dusk = Range.NONE;
    Range probe = Range.NONE;
    Range heater = Range.NONE;
    Range starts = Range.NONE;
    for (Expectation e : sorts) {
      dusk = dusk.with(e.duskV());
      probe = probe.with(e.duskProbeC()).with(e.dawnProbeC());
      heater = heater.with(e.nightHeaterH());
      starts = starts.with(e.nightStarts());
    }
    List<Sign> signs = new ArrayList<>();
    if (set.is(Setting.FITTED_PAN)) {
      signs.add(
          new Sign(
              "Heater plate or pan hot while the controller says off",
              "",
              "at once, whatever the numbers",
              "Pull the heater's plug: the relay may have welded. Leave it out until the relay is"
                  + " replaced."));
      signs.add(
          new Sign(
              "Pan",
              "above " + c(set.get(Setting.LIMIT_PAN_CENTI_C) / 100.0),
              "above " + c(set.get(Setting.LIMIT_PAN_TRIP_CENTI_C) / 100.0),
              "Pull the heater's plug, let it cool, then look for covered vents and a probe that"
                  + " has slipped out of the filling."));
    }
    double tenth = s.battery().nominalV() / 12 * VOLTS_MARGIN;
    if (!dusk.none()) {
      String shed =
          set.is(Setting.SHED_BY_STATE_OF_CHARGE)
              ? "heat shed by the charge gauge"
              : "below " + v(set.get(Setting.SHED_HEAT_ENTER_MILLI_V) / 1000.0);
      signs.add(
          new Sign(
              "Battery at dusk",
              "below " + v(dusk.low() - tenth) + " after a sunny day",
              shed,
              "Look for snow or dirt on the panel, then for the fuse; charge from another source"
                  + " before night, or take the bees under a roof."));
    }
    if (!probe.none()) {
      double survival = set.get(Setting.HEAT_SURVIVAL_CENTI_C) / 100.0;
      double low = probe.low() - PROBE_MARGIN_K;
      signs.add(
          new Sign(
              "Brood probe",
              "below " + c(low) + " or above " + c(probe.high() + PROBE_MARGIN_K),
              "below "
                  + c(Math.min(survival, low - PROBE_MARGIN_K))
                  + " with charge in the battery, or above "
                  + c(set.get(Setting.ALARM_BROOD_HIGH_CENTI_C) / 100.0),
              "Too cold: is the probe among the bees, is the relay on, is the plate warm? Too warm:"
                  + " pull the heater's plug and open a vent."));
      signs.add(
          new Sign(
              "Brood probe, the same to the last digit on two visits",
              "once",
              "twice",
              "The probe is stuck: replace it; the controller should have told of it."));
    }
    if (heater.high() > 0) {
      signs.add(
          new Sign(
              "Heater hours since dusk, read at dawn",
              String.format(
                  Locale.ROOT,
                  "above %.1f h or below %.1f h",
                  Math.min(24, HOURS_MARGIN * heater.high()),
                  heater.low() / HOURS_MARGIN),
              "none on a cold night with charge in the battery",
              "Check fuse, cut-out and element. The independent cut-out does not reset itself: find"
                  + " out why it opened before you close it."));
      signs.add(
          new Sign(
              "Starts since dusk, read at dawn",
              String.format(Locale.ROOT, "above %.0f", Math.ceil(HOURS_MARGIN * starts.high() + 1)),
              String.format(Locale.ROOT, "above %.0f", Math.ceil(2 * starts.high() + 2)),
              "A loose probe or a failing relay: look at both; widen the differential if the probe"
                  + " is where it belongs."));
    }
    return signs;
  }

  static String c(double celsius) {
    return String.format(Locale.ROOT, "%.1f °C (%.0f °F)", celsius, celsius * 1.8 + 32);
  }

  private static String v(double volts) {
    return String.format(Locale.ROOT, "%.2f V", volts);
  }
}
