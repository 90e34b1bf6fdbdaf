package org.broodbench.audit;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.constraints.LongRange;
import org.broodbench.controller.Setting;
import org.broodbench.controller.Settings;
import org.broodbench.power.BoardSpec;
import org.broodbench.power.Chemistry;
import org.broodbench.power.InverterSpec;
import org.broodbench.rig.Known;
import org.broodbench.rig.PaperSpec;
import org.broodbench.rig.ProbeSpec;
import org.broodbench.rig.Scenario;

/** On random rigs: no finding without its cause, no cause without its finding, cures that cure. */
class AuditProperties {
  private static final double COPPER_OHM_MM2_M = 1.7241e-2; // IEC 60028

  @Property(tries = 60, seed = "20", shrinking = ShrinkingMode.OFF)
  void causesAndFindingsComeTogether(@ForAll @LongRange(min = 0, max = 1_000_000) long seed) {
    Optional<PaperRig> made = PaperRig.of(RandomSettings.of(seed));
    if (made.isEmpty()) {
      return;
    }
    Map<String, Boolean> found = new LinkedHashMap<>();
    Map<String, Boolean> caused = causes(made.get());
    caused.keySet().forEach(id -> found.put(id, made.get().report().has(id)));
    assertEquals(caused, found, () -> seed + " " + made.get().settings());
  }

  @Property(tries = 60, seed = "21", shrinking = ShrinkingMode.OFF)
  void everyRemedyCures(@ForAll @LongRange(min = 0, max = 1_000_000) long seed) {
    Optional<PaperRig> made = PaperRig.of(RandomSettings.of(seed));
    if (made.isEmpty()) {
      return;
    }
    List<String> stay = new ArrayList<>();
    for (Finding f : made.get().report().findings()) {
      Optional<PaperRig> cured = made.get().with(f.set());
      if (cured.isEmpty()) {
        stay.add(f.id() + ": refused with " + f.set());
      } else if (cured.get().report().has(f.id())) {
        stay.add(f.id() + ": stays with " + f.set());
      }
    }
    assertEquals(List.of(), stay, () -> seed + " " + made.get().settings());
  }

  /** Under one settings after the other it says what a fresh audit of each says. */
  @Property(tries = 20, seed = "22", shrinking = ShrinkingMode.OFF)
  void settingsInTurnAreJudgedAsByThemselves(
      @ForAll @LongRange(min = 0, max = 1_000_000) long seed) {
    Optional<PaperRig> made = PaperRig.of(RandomSettings.of(seed));
    if (made.isEmpty()) {
      return;
    }
    Scenario s = made.get().scenario();
    Settings own = s.controller().settings();
    SettingsAudit audit = new SettingsAudit(s, made.get().season());
    int setPoint = own.get(Setting.HEAT_SET_POINT_CENTI_C);
    for (int centiC : List.of(setPoint, setPoint - 250, setPoint, setPoint - 10)) {
      Settings other = own.with(Setting.HEAT_SET_POINT_CENTI_C, centiC);
      AuditReport fresh =
          Audit.of(s.withController(s.controller().withSettings(other)), made.get().season());
      assertEquals(fresh, audit.of(other), () -> seed + " at " + centiC);
    }
  }

  /** By id whether there is a cause, worked out anew from the scenario. */
  private static Map<String, Boolean> causes(PaperRig rig) {
    Scenario s = rig.scenario();
    Map<String, Boolean> c = new LinkedHashMap<>();
    wiring(s, c);
    battery(rig, c);
    bees(s, c);
    PaperSpec.CutOut cut = s.paper().cutOut();
    c.put("no_cutout", !s.paper().cutOutStaysOpen());
    if (s.paper().cutOutStaysOpen() && cut.opensC() + cut.toleranceK() > 60) {
      c.put("cutout_band", true);
    }
    c.put("fail_off", s.paper().failsOff() != Known.YES);
    c.put("keeps_latches", s.paper().keepsLatches() != Known.YES);
    c.put("returns_by_itself", stays(s));
    return c;
  }

  private static void wiring(Scenario s, Map<String, Boolean> c) {
    boolean dc = !s.heater().onInverter();
    double ohm =
        s.wiring().heaterContactOhm()
            + 2 * s.wiring().heaterLengthM() * COPPER_OHM_MM2_M / s.wiring().heaterMm2();
    double element = s.heater().ratedV() * s.heater().ratedV() / s.heater().powerW();
    double highA =
        dc
            ? s.battery().absorptionV() / (element + ohm)
            : s.heater().powerW() / s.heater().ratedV();
    c.put("voltage_drop", dc && ohm / (element + ohm) > 0.05);
    c.put("relay_rating", 1.25 * highA > s.paper().relayA());
    double fuseA = s.wiring().heaterFuseA();
    double batteryA = s.wiring().batteryFuseA();
    boolean heaterBare = dc && carriesLess(s.wiring().heaterMm2(), fuseA > 0 ? fuseA : batteryA);
    c.put("fuse_wire", heaterBare || carriesLess(s.paper().batteryWireMm2(), batteryA));
    if (dc && fuseA > 0 && fuseA < 1.25 * highA) {
      c.put("fuse_small", true);
    }
    double ratio = s.battery().nominalV() / s.heater().ratedV();
    c.put("heater_volts", dc && (ratio * ratio > 1.5 || ratio * ratio < 0.67));
    double mainsW = dc ? 0 : s.heater().powerW();
    mainsW += s.loads().stream().filter(l -> l.onInverter()).mapToDouble(l -> l.powerW()).sum();
    c.put("inverter_small", mainsW > s.inverter().ratedW());
    boolean searches = s.inverter().ratedW() > 0 && s.inverter().search().wakeW() > 0;
    c.put("inverter_asleep", searches && mainsW > 0 && mainsW < s.inverter().search().wakeW());
  }

  /** Whether a fuse lets more flow than a wire carries; a fuse of 0 A is none. */
  private static boolean carriesLess(double mm2, double fuseA) {
    return fuseA <= 0 || fuseA > 15 * StrictMath.pow(mm2, 0.62);
  }

  private static void battery(PaperRig rig, Map<String, Boolean> c) {
    Scenario s = rig.scenario();
    boolean acid = s.battery().chemistry() != Chemistry.LFP;
    double milliAPerAh = s.battery().chemistry() == Chemistry.FLOODED ? 20 : 8;
    double airM3H = 0.05e-3 * milliAPerAh * s.battery().capacityAh() * s.battery().nominalV() / 2;
    c.put(
        "battery_gas",
        acid && (s.battery().warmedShare() == 1 || 1e4 * s.paper().boxVentM2() < 28 * airM3H));
    double coldC =
        Math.min(rig.season().worstWeek().minAirC(), rig.season().darkestMonth().minAirC());
    coldC += s.battery().warmedShare() * Math.max(0, 25 - coldC);
    c.put("frost_charge", !acid && coldC < 0);
    boolean lone = s.paper().beside().isEmpty();
    if (lone || s.paper().beside().get().chemistry() != s.battery().chemistry()) {
      c.put("mixed_chemistry", !lone);
    }
  }

  private static void bees(Scenario s, Map<String, Boolean> c) {
    ProbeSpec.Place place = s.probe(ProbeSpec.Role.BROOD_A).place();
    boolean comb = place == ProbeSpec.Place.BROOD_COMB;
    int setCenti = s.controller().settings().get(Setting.HEAT_SET_POINT_CENTI_C);
    int offCenti = s.controller().settings().get(Setting.FAN_OFF_CENTI_C);
    int onCenti = s.controller().settings().get(Setting.FAN_ON_CENTI_C);
    boolean fan = s.fan().powerW() > 0;
    c.put("fan_set_point", fan && (offCenti - setCenti < 100 || comb && onCenti > 3800));
    boolean brood = s.colony().broodCells() > 0;
    c.put("broodless_heated", !brood && setCenti > (comb ? 2000 : 1200));
    if (brood && place == ProbeSpec.Place.BOX_AIR || !brood) {
      c.put("probe_place", brood);
    }
  }

  /** Whether something in the chain stays open after a flat battery. */
  private static boolean stays(Scenario s) {
    double most = s.battery().absorptionV();
    BoardSpec board = s.battery().board();
    InverterSpec.Trips t = s.inverter().trips();
    boolean byBoard =
        board.fitted()
            && (board.returns() == BoardSpec.Return.HAND
                || board.lowReturnV() >= most
                || s.paper().startsOnOpenBoard() != Known.YES && !s.shore().present());
    boolean byOutput = s.pv().output().fitted() && s.pv().output().returnV() >= most;
    boolean byInverter =
        s.heater().onInverter()
            && (!t.returnsByItself()
                || t.lowReturnV() >= most
                || t.mostRestarts() < 1_000_000 && t.unlockV() >= most);
    return byBoard || byOutput || byInverter;
  }
}
