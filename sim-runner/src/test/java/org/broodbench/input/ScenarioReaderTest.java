package org.broodbench.input;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.broodbench.controller.ProbePlace;
import org.broodbench.controller.Setting;
import org.broodbench.controller.Settings;
import org.broodbench.power.BatterySpec;
import org.broodbench.power.Chemistry;
import org.broodbench.rig.EventSpec;
import org.broodbench.rig.ProbeSpec.Role;
import org.broodbench.rig.Requirement;
import org.broodbench.rig.Scenario;
import org.junit.jupiter.api.Test;

class ScenarioReaderTest {
  private static final Path DEMO = Path.of("..", "scenarios", "late-split.toml");

  /** The shortest scenario: what has no default and nothing else. */
  static final String LEAST =
      """
      [run]
      from = 2027-04-20
      [site]
      latitude = "47 N"
      longitude = "10 E"
      [colony]
      bees = 2500
      brood_cells = 2000
      [heater]
      power = "20 W"
      [battery]
      capacity = "100 Ah"
      """;

  static Scenario read(String text, String... settings) {
    return ScenarioReader.read("a.toml", text.getBytes(StandardCharsets.UTF_8), List.of(settings));
  }

  @Test
  void readsTheDemo() {
    Scenario demo = ScenarioReader.read(DEMO, List.of());
    assertEquals("late-split.toml", demo.fileName());
    assertEquals(64, demo.sha256().length());
    assertEquals(47, demo.place().latitudeDeg());
    assertEquals(900, demo.place().altitudeM());
    assertEquals(2500, demo.colony().bees());
    assertEquals(0.2875, demo.colony().massKg(), 1e-12);
    assertEquals(14, demo.window().days());
    assertEquals(1_808_179_200L, demo.window().fromEpochS());
    assertEquals(2, demo.hive().wall().size());
    assertEquals(0.02, demo.hive().lid().get(1).thicknessM(), 1e-12);
    assertEquals(2.5, demo.wiring().heaterMm2(), 1e-12);
    assertEquals(100, demo.battery().capacityAh(), 1e-12);
    assertEquals(0.95, demo.battery().initialSoc(), 1e-12);
    assertEquals(0.03, demo.battery().selfDischargePerMonth(), 1e-12);
    assertEquals(120, demo.pv().powerW(), 1e-12);
    assertEquals(4000, demo.heater().pan().heatJK(), 1e-9);
    assertEquals(3350, demo.controller().settings().get(Setting.HEAT_SET_POINT_CENTI_C));
    assertEquals(300_000, demo.controller().settings().get(Setting.RELAY_MIN_OFF_MILLIS));
    assertEquals(1667, demo.controller().settings().get(Setting.HEATER_RATED_MILLI_A));
    assertTrue(demo.controller().settings().is(Setting.FITTED_OUTDOOR));
    assertNotNull(demo.probe(Role.BROOD_A));
    assertNull(demo.probe(Role.BROOD_B));
    assertEquals(7, demo.requirements().size());
    assertEquals(new Requirement(Requirement.Kind.BROOD_IN_BAND, 95), demo.requirements().get(0));
    assertEquals(
        List.of(
            new EventSpec.Feed(4 * 86_400 + 36_000, 0.5, 0.4, 30),
            new EventSpec.OpenLid(9 * 86_400 + 39_600, 300)),
        demo.events());
    assertTrue(demo.assumed().contains("colony.heat_loss_factor = 2"), demo.assumed()::toString);
    assertFalse(demo.assumed().contains("battery.chemistry = agm"));
  }

  @Test
  void everyScenarioOfTheProjectReads() throws IOException {
    try (Stream<Path> files = Files.list(DEMO.getParent())) {
      List<Path> scenarios = files.filter(f -> f.toString().endsWith(".toml")).toList();
      assertTrue(scenarios.contains(DEMO));
      for (Path file : scenarios) {
        assertFalse(ScenarioReader.read(file, List.of()).requirements().isEmpty(), file::toString);
      }
    }
  }

  @Test
  void everythingElseHasADefault() {
    Scenario least = read(LEAST);
    assertEquals(14, least.window().days());
    assertEquals(1, least.hive().wall().size());
    assertEquals(180, least.pv().groups().get(0).azimuthDeg());
    assertTrue(least.weather().generated());
    assertEquals(List.of(), least.requirements());
    assertEquals(List.of(), least.events());
    int optional = 1 + 4 + Requirement.Kind.values().length;
    long elsewhere =
        ScenarioKeys.all().all().stream()
            .filter(
                k ->
                    k.path()
                        .matches(
                            "(event|load|pv\\.shade|site\\.horizon|weather\\.column)\\.\\*.*"
                                + "|(size|tune|log)\\..*"))
            .count();
    assertEquals(
        ScenarioKeys.all().all().size() - optional - elsewhere - 14, least.assumed().size());
  }

  @Test
  void theControllersOwnDefaultsArriveUnchanged() {
    Settings expected =
        Settings.defaults(ProbePlace.BROOD_COMB, org.broodbench.controller.Chemistry.AGM);
    Settings read = read(LEAST).controller().settings();
    for (SettingKey key : SettingKeys.all()) {
      switch (key.setting()) {
        // these follow the rig
        case BATTERY_MILLI_OHM -> assertEquals(19, read.get(key.setting()));
        case BATTERY_WORST_MILLI_OHM -> assertEquals(38, read.get(key.setting()));
        case HEATER_RATED_MILLI_A -> assertEquals(1667, read.get(key.setting()));
        case FAN_RATED_MILLI_A -> assertEquals(125, read.get(key.setting()));
        default -> assertEquals(expected.get(key.setting()), read.get(key.setting()), key.path());
      }
    }
  }

  @Test
  void everySettingHasAKeyUnlessTheRigTellsIt() {
    List<Setting> keyed = SettingKeys.all().stream().map(SettingKey::setting).toList();
    for (Setting setting : Setting.values()) {
      boolean told = setting.name().startsWith("FITTED_") || setting == Setting.BROOD_B_LIKE_PLACE;
      assertEquals(!told, keyed.contains(setting), setting.name());
    }
  }

  @Test
  void defaultsFollowPlaceChemistryAndVolts() {
    Settings edge = read(LEAST, "probe.brood_a.place=nest_edge").controller().settings();
    assertEquals(2200, edge.get(Setting.HEAT_SET_POINT_CENTI_C));
    assertEquals(3200, edge.get(Setting.FAN_ON_CENTI_C));
    assertEquals(ProbePlace.NEST_EDGE, edge.place());

    Scenario lfp = read(LEAST, "battery.chemistry=lfp");
    assertTrue(lfp.controller().settings().is(Setting.SHED_BY_STATE_OF_CHARGE));
    assertTrue(lfp.sensors().stateOfCharge());
    assertEquals(0.99, lfp.battery().coulombicEfficiency(), 1e-12);
    assertEquals(14.2, lfp.battery().absorptionV(), 1e-12);
    assertEquals(Chemistry.LFP, lfp.battery().chemistry());

    Scenario volts = read(LEAST, "battery.nominal_volts=24 V");
    assertEquals(24_500, volts.controller().settings().get(Setting.SHED_SET_BACK_ENTER_MILLI_V));
    assertEquals(28.8, volts.battery().absorptionV(), 1e-12);
    assertEquals(24, volts.heater().ratedV());
    assertEquals(0.008, volts.battery().resistanceOhm(), 1e-12);
  }

  @Test
  void aLargeHeaterWidensTheDefaultLeaveThresholds() {
    Settings large = read(LEAST, "heater.power=250 W").controller().settings();
    assertEquals(List.of(), large.problems());
    // 12.25 V + (20.833 + 0.125) A x 19 mOhm + 0.05 V + 0.02 V = 12.718 V, up to 10 mV and one more
    assertEquals(12_730, large.get(Setting.SHED_SET_BACK_LEAVE_MILLI_V));
    assertEquals(12_300, large.get(Setting.SHED_FAN_LEAVE_MILLI_V));
    Settings small = read(LEAST).controller().settings();
    assertEquals(12_550, small.get(Setting.SHED_SET_BACK_LEAVE_MILLI_V));
  }

  @Test
  void weaningBySetPointAloneIsPossible() {
    Settings lower = read(LEAST, "controller.heat.set_point=16 degC").controller().settings();
    assertEquals(List.of(), lower.problems());
    assertEquals(1600, lower.get(Setting.HEAT_SURVIVAL_CENTI_C));
    assertEquals(1500, lower.get(Setting.ALARM_BROOD_LOW_CENTI_C));
    String weaning = "[[event]]\nat = \"5 d\"\nwhat = \"set_point\"\nset_point = \"16 degC\"\n";
    Settings later = read(LEAST + weaning).controller().settings();
    assertEquals(3300, later.get(Setting.HEAT_SET_POINT_CENTI_C));
    assertEquals(1600, later.get(Setting.HEAT_SURVIVAL_CENTI_C));
    assertEquals(List.of(), later.with(Setting.HEAT_SET_POINT_CENTI_C, 1600).problems());
  }

  @Test
  void contractKeysMeanWhatTheySay() {
    String groups =
        LEAST
            + """
            [[pv.group]]
            power = "60 W"
            [[pv.group]]
            power = "20 W"
            azimuth = "90 deg"
            """;
    assertEquals(80, read(groups).pv().powerW(), 1e-12);
    Scenario scaled = read(groups, "pv.power=200 W");
    assertEquals(150, scaled.pv().groups().get(0).powerW(), 1e-9);
    assertEquals(50, scaled.pv().groups().get(1).powerW(), 1e-9);
    assertEquals(90, scaled.pv().groups().get(1).azimuthDeg());
    String sum = groups + "[pv]\npower = \"200 W\"\n";
    assertEquals(200, read(sum).pv().powerW(), 1e-9);
    assertEquals(90, read(sum, "pv.group.1.power=30 W").pv().powerW(), 1e-9);

    String lid = LEAST + "[hive]\ninsulation = \"30 mm\"\nlid_insulation = \"80 mm\"\n";
    assertEquals(0.03, read(lid).hive().wall().get(1).thicknessM(), 1e-12);
    assertEquals(0.08, read(lid).hive().lid().get(1).thicknessM(), 1e-12);
    assertEquals(0.05, read(lid, "hive.insulation=50mm").hive().lid().get(1).thicknessM(), 1e-12);
    assertEquals(1, read(lid, "hive.insulation=0 mm").hive().lid().size());

    Scenario inverter = read(LEAST, "heater.supply=inverter");
    assertTrue(inverter.heater().onInverter());
    assertEquals(230, inverter.heater().ratedV());
    assertEquals(40, inverter.inverter().ratedW(), 1e-12);
    assertEquals(0.6, inverter.inverter().idleW(), 1e-12);
    assertEquals(0.107 / 40, inverter.inverter().quadraticLossPerW(), 1e-12);
    assertTrue(inverter.controller().settings().is(Setting.FITTED_INVERTER));

    assertEquals(100, read(LEAST, "battery.capacity=1.2 kWh").battery().capacityAh(), 1e-9);
    assertEquals(
        100,
        read(LEAST, "battery.capacity=1.28 kWh", "battery.chemistry=lfp").battery().capacityAh(),
        1e-9);
    assertEquals(2.0809, read(LEAST, "wiring.heater_wire=14 AWG").wiring().heaterMm2(), 1e-4);
    assertEquals(BatterySpec.Place.HIVE, read(LEAST, "battery.place=hive").battery().place());
  }

  @Test
  void southOfTheEquatorThePanelLooksNorth() {
    Scenario south = read(LEAST, "site.latitude=33.5 S");
    assertEquals(-33.5, south.place().latitudeDeg());
    assertEquals(0, south.pv().groups().get(0).azimuthDeg());
  }

  @Test
  void readsEveryKindOfEventInTheOrderOfTime() {
    String text =
        LEAST
            + """
            [shore]
            power = "100 W"
            [[load]]
            name = "camera"
            power = "5 W"
            from = "18 h"
            to = "6 h 30 min"
            [[event]]
            at = "6 d"
            what = "set_point"
            set_point = "32 degC"
            [[event]]
            at = 2027-04-21
            what = "install_colony"
            bees = 3000
            [[event]]
            at = 2027-04-22T08:00:00+02:00
            what = "add_box"
            stores = "2 kg"
            [[event]]
            at = "3 d"
            what = "change_vent"
            top_vent = "5 cm2"
            [[event]]
            at = "4 d"
            what = "shore_power"
            present = false
            """;
    Scenario scenario = read(text);
    assertEquals(
        List.of(
            new EventSpec.InstallColony(86_400, 3000, 0),
            new EventSpec.AddBox(2 * 86_400 + 6 * 3600, 0.244, 10, 2),
            new EventSpec.ChangeVent(3 * 86_400, 5e-4),
            new EventSpec.ShorePower(4 * 86_400, false),
            new EventSpec.SetPoint(6 * 86_400, 32)),
        scenario.events());
    assertTrue(scenario.shore().present());
    assertEquals(18, scenario.loads().get(0).fromHourUtc());
    assertEquals(6.5, scenario.loads().get(0).toHourUtc());
    // another window by option drops the events of the file that it does not reach
    assertEquals(3, read(text, "run.from=2027-05-01", "run.days=10").events().size());
  }

  @Test
  void namesTheFileAsGivenAndTheBytesByDigest() throws IOException {
    assertEquals(
        "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad",
        assertDoesRefuse("abc"),
        "SHA-256 of abc, FIPS 180-4 example");
    Scenario demo = ScenarioReader.read("x/y/late-split.toml", Files.readAllBytes(DEMO), List.of());
    assertEquals("late-split.toml", demo.fileName());
    assertEquals(ScenarioReader.read(DEMO, List.of()).sha256(), demo.sha256());
  }

  /** "abc" is no scenario; its digest is reached through the same method. */
  private static String assertDoesRefuse(String text) {
    assertThrows(BadInput.class, () -> read(text));
    return ScenarioReader.sha256(text.getBytes(StandardCharsets.UTF_8));
  }

  @Test
  void equalTextsGiveEqualScenarios() {
    assertEquals(read(LEAST), read(LEAST));
  }
}
