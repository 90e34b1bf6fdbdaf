package org.broodbench.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.broodbench.rig.ProbeSpec;
import org.broodbench.rig.Scenario;

/**
 * An uncertain number of a scenario.
 *
 * @param key its key
 * @param low lowest likely value, in the unit
 * @param high highest likely value
 * @param unit how the key writes it; empty for a bare number
 * @param source where the range is from
 * @param settledBy which measurement would tell it
 */
public record Unsure(
    String key, double low, double high, String unit, String source, String settledBy) {

  /** The numbers that an ensemble varies, as far as the scenario has them. */
  static List<Unsure> of(Scenario s) {
    List<Unsure> all = new ArrayList<>();
    if (s.colony().bees() > 0) {
      all.add(
          new Unsure(
              "colony.heat_loss_factor",
              Evaluation.LOW_LOSS,
              Evaluation.HIGH_LOSS,
              "",
              "published values from laboratory clusters to whole colonies",
              "log comb, box air and outdoor temperature through two nights without heat"));
      all.add(
          new Unsure(
              "colony.highest_heat",
              25,
              50,
              "W/kg",
              "own choice around published maxima",
              "log comb temperature and heater hours in the coldest night"));
      all.add(
          new Unsure(
              "hive.cluster_exchange",
              0.01,
              0.1,
              "L/s",
              "likely range of the key",
              "carbon dioxide in the brood box at night"));
    }
    all.add(
        new Unsure(
            "hive.edge_factor",
            1,
            1.6,
            "",
            "own choice: sums of layers to moulded hives with open joints",
            "empty hive, a known heater power, inside and outdoor temperature for two nights"));
    all.add(
        new Unsure(
            "hive.open_share",
            0.3,
            0.7,
            "",
            "own choice",
            "carbon dioxide or smoke at entrance and vent on a still night"));
    all.add(
        new Unsure(
            "hive.comb_film",
            0.25,
            0.5,
            "m2K/W",
            "likely range of the key",
            "two probes: comb beside the nest, and the air beside it"));
    all.add(
        new Unsure(
            "hive.solar_absorptance",
            0.4,
            0.8,
            "",
            "own choice around bare wood",
            "roof temperature on a sunny noon"));
    if (s.pv().powerW() > 0) {
      all.add(
          new Unsure(
              "pv.clean_share",
              0.85,
              1,
              "",
              "own choice: dirt between two washings",
              "panel watts at a clear noon, before and after washing"));
    }
    all.add(
        new Unsure(
            "battery.capacity",
            0.8 * s.battery().capacityAh(),
            s.battery().capacityAh(),
            "Ah",
            "a lead-acid or lithium battery counts as worn out at 80 % (common practice, no source)",
            "a counted discharge from full to the shedding of heat"));
    if (s.probe(ProbeSpec.Role.BROOD_A) != null) {
      all.add(
          new Unsure(
              "probe.brood_a.offset",
              -0.5,
              0.5,
              "K",
              "accuracy class of cheap digital probes (makers' sheets, from memory)",
              "the probe in melting ice"));
    }
    return all;
  }

  /** The setting of a value, {@code KEY=VALUE}. */
  String setting(double value) {
    return String.format(Locale.ROOT, "%s=%.6g%s", key, value, unit.isEmpty() ? "" : " " + unit);
  }
}
