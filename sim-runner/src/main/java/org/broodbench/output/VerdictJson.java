package org.broodbench.output;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.broodbench.hive.HiveLedger;
import org.broodbench.loop.AlarmSpan;
import org.broodbench.loop.RunResult;
import org.broodbench.power.PowerLedger;
import org.broodbench.rig.Scenario;
import org.broodbench.study.Cautions;
import org.broodbench.study.JudgedRequirement;
import org.broodbench.study.Outcome;

/**
 * The verdict of a run as JSON, format {@code broodbench-verdict/1}. Numbers are unrounded; what
 * never happened is null.
 */
public final class VerdictJson {
  private static final double J_PER_WH = 3600;

  private VerdictJson() {}

  /** The whole text. */
  public static String of(Outcome o) {
    return JsonText.object(json -> write(json, o));
  }

  private static void write(JsonText json, Outcome o) throws IOException {
    Scenario s = o.scenario();
    RunResult r = o.main();
    long from = s.window().fromEpochS();
    json.text("format", "broodbench-verdict/1").flag("met", o.met()).whole("seed", s.run().seed());
    json.object(
        "scenario",
        j -> j.text("title", s.title()).text("file", s.fileName()).text("sha256", s.sha256()));
    json.object(
        "weather",
        j ->
            j.text("source", o.weather().source())
                .text("format", o.weather().format())
                .text("from", Stamps.of(from, 0))
                .text("to", Stamps.of(s.window().toEpochS(), 0))
                .number("filled_hours", o.weather().filledHours())
                .texts("warnings", o.weather().warnings()));
    List<JsonText.Body> requirements = new ArrayList<>();
    for (JudgedRequirement q : o.requirements()) {
      requirements.add(j -> requirement(j, q, from));
    }
    json.objects("requirements", requirements);
    json.object("heater", j -> heater(j, r));
    json.object(
        "fan",
        j ->
            j.whole("starts", r.fan().starts())
                .number("duty", r.fan().onS() / (r.days() * 86_400)));
    json.object("brood", j -> brood(j, r, s));
    json.object("battery", j -> battery(j, r));
    json.object("energy_wh", j -> energy(j, r.power()));
    json.object("charge_ah", j -> charge(j, r.power()));
    SupplyVerdict.write(json, r.supply());
    json.object("heat_wh", j -> heat(j, r.hive()));
    json.object("water_g", j -> water(j, r.hive()));
    json.object("co2_g", j -> co2(j, r.hive()));
    json.object(
        "air",
        j ->
            j.number("brood_rh_mean_percent", r.air().meanRhPercent())
                .number("brood_rh_min_percent", r.air().lowRh().value())
                .number("co2_mean_percent", r.air().meanCo2Percent())
                .number("co2_max_percent", r.air().highCo2().value())
                .number("hours_condensing", r.air().hoursCondensing()));
    HiveJson.write(json, r, from);
    json.object("colony", j -> colony(j, r));
    json.object(
        "baselines",
        j -> {
          j.object("no_heat", b -> baseline(b, "the same hive, heater unplugged", o.noHeat(), s));
          j.object(
              "insulation_only",
              b ->
                  baseline(
                      b,
                      "heater unplugged, 50 mm of expanded polystyrene added all round",
                      o.insulationOnly(),
                      s));
        });
    json.object(
        "cluster_heat_loss",
        j -> {
          j.object("low", b -> baseline(b, "laboratory clusters, factor 1.0", o.lowLoss(), s));
          j.object(
              "high", b -> baseline(b, "whole colonies in hives, factor 2.85", o.highLoss(), s));
        });
    if (o.outlook().isPresent()) {
      OutlookJson.write(json, o.outlook().get());
    }
    RemedyJson.write(json, o.remedies());
    List<JsonText.Body> alarms = new ArrayList<>();
    for (AlarmSpan a : r.alarms()) {
      alarms.add(
          j ->
              j.text("name", a.name())
                  .text("first_at", Stamps.of(from, a.firstAtS()))
                  .number("hours", a.hours()));
    }
    json.objects("alarms", alarms);
    if (o.sure().isPresent()) {
      json.object("sure", j -> SureJson.write(j, o.sure().get()));
    } else {
      json.nothing("sure");
    }
    json.texts("flags", o.flags());
    json.texts("assumed", o.assumed());
    json.texts("cautions", Cautions.all());
  }

  private static void requirement(JsonText j, JudgedRequirement q, long from) throws IOException {
    j.text("name", q.requirement().kind().key())
        .flag("met", q.met())
        .flag("depends_on_colony", q.dependsOnColony())
        .number("value", q.value())
        .number("limit", q.requirement().limit())
        .text("sense", q.requirement().kind().atLeast() ? "at_least" : "at_most")
        .text("unit", q.requirement().kind().unit());
    double margin =
        q.requirement().kind().atLeast()
            ? q.value() - q.requirement().limit()
            : q.requirement().limit() - q.value();
    j.number("margin", margin);
    if (q.worstAtS() >= 0) {
      j.text("worst_at", Stamps.of(from, q.worstAtS()));
    } else {
      j.nothing("worst_at");
    }
    j.text("why", q.why());
  }

  private static void heater(JsonText j, RunResult r) throws IOException {
    j.whole("starts", r.heaterPowered().starts())
        .whole("commanded_starts", r.heaterCommanded().starts())
        .number("starts_per_day", r.heaterPowered().starts() / r.days())
        .number("shortest_on_s", r.heaterPowered().shortestOnS())
        .number("shortest_off_s", r.heaterPowered().shortestOffS())
        .number("duty", r.heaterPowered().onS() / (r.days() * 86_400));
    j.object(
        "early_stops",
        e -> {
          for (var entry : r.earlyStops().entrySet()) {
            e.whole(entry.getKey(), entry.getValue());
          }
        });
  }

  private static void brood(JsonText j, RunResult r, Scenario s) throws IOException {
    RunResult.Brood b = r.brood();
    j.number("band_low_c", s.run().bandLowC())
        .number("band_high_c", s.run().bandHighC())
        .number("mean_c", b.meanC())
        .number("min_c", b.low().value())
        .number("max_c", b.high().value())
        .number("hours_below_band", b.hoursBelow())
        .number("hours_above_band", b.hoursAbove())
        .number("degree_hours_below", b.degreeHoursBelow())
        .number("degree_hours_above", b.degreeHoursAbove());
  }

  private static void battery(JsonText j, RunResult r) throws IOException {
    RunResult.BatteryUse b = r.battery();
    j.number("lowest_soc", b.lowestSoc().value())
        .number("lowest_v", b.lowestV().value())
        .number("final_soc", b.finalSoc())
        .whole("sheds", r.sheds())
        .number("hours_shed", r.hoursShed())
        .number("equivalent_full_cycles", b.fullCycles())
        .number("days_since_full", b.daysSinceFull());
    SupplyVerdict.stress(j, r.supply().battery());
  }

  private static void energy(JsonText j, PowerLedger p) throws IOException {
    j.number("pv_available", p.pvAvailableJ / J_PER_WH)
        .number("pv_used", p.pvUsedJ / J_PER_WH)
        .number("shore", p.shoreJ / J_PER_WH)
        .number("battery_change", p.batteryChangeJ / J_PER_WH)
        .number("heater", p.heaterJ / J_PER_WH)
        .number("fan", p.fanJ / J_PER_WH)
        .number("controller", p.controllerJ / J_PER_WH)
        .number("other_loads", p.otherLoadsJ / J_PER_WH)
        .number("charge_loss", p.chargeLossJ / J_PER_WH)
        .number("battery_loss", p.batteryLossJ / J_PER_WH)
        .number("inverter_loss", p.inverterLossJ / J_PER_WH)
        .number("wiring_loss", p.wiringLossJ / J_PER_WH)
        .number("residual", p.energyResidualJ() / J_PER_WH);
  }

  private static void charge(JsonText j, PowerLedger p) throws IOException {
    j.number("in", p.chargeInAh)
        .number("out", p.chargeOutAh)
        .number("lost", p.chargeLostAh)
        .number("stored_change", p.chargeStoredAh)
        .number("residual", p.chargeResidualAh());
  }

  private static void heat(JsonText j, HiveLedger h) throws IOException {
    j.number("heater", h.heaterJ / J_PER_WH)
        .number("colony", h.colonyJ / J_PER_WH)
        .number("sun", h.sunJ / J_PER_WH)
        .number("electronics", h.electronicsJ / J_PER_WH)
        .number("latent_released", h.latentReleasedJ / J_PER_WH)
        .number("lost_walls", h.lostWallsJ / J_PER_WH)
        .number("lost_air", h.lostAirJ / J_PER_WH)
        .number("latent_taken", h.latentTakenJ / J_PER_WH)
        .number("stored_change", h.storedJ / J_PER_WH)
        .number("residual", h.heatResidualJ() / J_PER_WH);
  }

  private static void water(JsonText j, HiveLedger h) throws IOException {
    j.number("made", h.waterMadeKg * 1e3)
        .number("fetched", h.waterFetchedKg * 1e3)
        .number("in", h.waterInKg * 1e3)
        .number("out", h.waterOutKg * 1e3)
        .number("drained", h.waterDrainedKg * 1e3)
        .number("condensed", h.waterCondensedKg * 1e3)
        .number("stored_change", h.waterStoredKg * 1e3)
        .number("residual", h.waterResidualKg() * 1e3);
  }

  private static void co2(JsonText j, HiveLedger h) throws IOException {
    j.number("made", h.co2MadeKg * 1e3)
        .number("in", h.co2InKg * 1e3)
        .number("out", h.co2OutKg * 1e3)
        .number("stored_change", h.co2StoredKg * 1e3)
        .number("residual", h.co2ResidualKg() * 1e3);
  }

  private static void colony(JsonText j, RunResult r) throws IOException {
    RunResult.ColonyEnd c = r.colony();
    j.whole("bees_start", Math.round(c.beesStart()))
        .number("bees_end", c.beesEnd())
        .whole("brood_start", Math.round(c.broodStart()))
        .number("brood_end", c.broodEnd())
        .number("brood_lost_to_cold", c.lostToCold())
        .number("brood_lost_to_heat", c.lostToHeat())
        .number("feed_eaten_g", c.feedEatenG());
  }

  private static void baseline(JsonText j, String what, RunResult r, Scenario s)
      throws IOException {
    j.text("what", what).object("brood", b -> brood(b, r, s)).object("colony", c -> colony(c, r));
    j.object(
        "air",
        a ->
            a.number("brood_rh_min_percent", r.air().lowRh().value())
                .number("co2_max_percent", r.air().highCo2().value()));
    j.number("lowest_soc", r.battery().lowestSoc().value());
    j.number("heater_wh", r.power().heaterJ / J_PER_WH);
  }
}
