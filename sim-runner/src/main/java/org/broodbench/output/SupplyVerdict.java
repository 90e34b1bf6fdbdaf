package org.broodbench.output;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.broodbench.power.SupplyUse;

/** The parts of a verdict that tell what the supply chain did. */
final class SupplyVerdict {
  private SupplyVerdict() {}

  /** {@code cut_outs} and {@code supply}. */
  static void write(JsonText json, SupplyUse use) throws IOException {
    List<JsonText.Body> opened = new ArrayList<>();
    for (SupplyUse.Opened c : use.cutOuts()) {
      opened.add(
          j ->
              j.text("name", c.name())
                  .whole("trips", c.trips())
                  .number("hours_open", c.hoursOpen())
                  .flag("returns_by_itself", c.returnsByItself())
                  .flag("open_at_end", c.openAtEnd()));
    }
    json.objects("cut_outs", opened);
    List<JsonText.Body> groups = new ArrayList<>();
    for (SupplyUse.Group g : use.groups()) {
      groups.add(
          j ->
              j.number("power_w", g.powerW())
                  .number("tilt_deg", g.tiltDeg())
                  .number("azimuth_deg", g.azimuthDeg())
                  .number("available_wh", g.availableWh()));
    }
    List<JsonText.Body> loads = new ArrayList<>();
    for (SupplyUse.Load l : use.loads()) {
      loads.add(
          j ->
              j.text("name", l.name())
                  .number("wanted_h", l.wantedH())
                  .number("fed_h", l.fedH())
                  .number("energy_wh", l.energyWh()));
    }
    json.object(
        "supply",
        j ->
            j.number("bulk_h", use.charging().bulkH())
                .number("absorption_h", use.charging().absorptionH())
                .number("float_h", use.charging().floatH())
                .objects("pv_groups", groups)
                .objects("loads", loads));
  }

  /** Further keys of {@code battery}. */
  static void stress(JsonText j, SupplyUse.BatteryStress b) throws IOException {
    j.number("hours_below_half", b.hoursBelowHalf())
        .number("frost_charge_ah", b.frostChargeAh())
        .number("lowest_c", b.lowestC())
        .number("highest_discharge_a", b.highestDischargeA())
        .number("highest_charge_a", b.highestChargeA())
        .number("highest_v", b.highestV())
        .number("charged_wh", b.chargedWh())
        .number("discharged_wh", b.dischargedWh());
  }
}
