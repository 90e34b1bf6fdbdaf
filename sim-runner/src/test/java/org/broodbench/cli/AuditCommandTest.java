package org.broodbench.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * The verb as a user types it: every finding by a rig with its cause, absent on a rig without, and
 * gone with the settings of its own remedy.
 */
class AuditCommandTest {
  private static final Path FOLDER = Path.of("..", "scenarios");

  /** A rig with everything in order; each cause below is one change to it. */
  private static final List<String> SOUND =
      List.of("pv.power=240 W", "hive.insulation=50 mm", "heater.power=15 W");

  /** Each id with changes that bring it about. */
  private static Map<String, List<String>> causes() {
    Map<String, List<String>> c = new LinkedHashMap<>();
    c.put("inverter_idle_share", List.of("heater.supply=inverter", "inverter.idle=9 W"));
    c.put("voltage_drop", List.of("heater.power=60 W", "wiring.heater_wire=0.75 mm2"));
    c.put("fuse_wire", List.of("wiring.heater_fuse=30 A", "wiring.heater_wire=0.75 mm2"));
    c.put("fuse_small", List.of("wiring.heater_fuse=1 A"));
    c.put("relay_rating", List.of("wiring.relay_rating=1 A"));
    c.put("energy_budget", List.of("pv.power=5 W", "hive.insulation=0 mm"));
    c.put("autonomy", List.of("battery.capacity=10 Ah"));
    c.put("heater_reach", List.of("heater.power=5 W", "hive.insulation=0 mm"));
    c.put("heater_oversize", List.of("heater.power=200 W"));
    c.put(
        "short_cycle",
        List.of(
            "probe.brood_a.place=box_air",
            "controller.heat.set_point=24 degC",
            "controller.heat.differential=0.1 K",
            "heater.pan_mass=0.5 kg",
            "heater.power=40 W",
            "requirement.starts_per_day=20"));
    c.put(
        "shed_sag", List.of("controller.battery.resistance=0 mOhm", "battery.resistance=200 mOhm"));
    c.put("mixed_chemistry", List.of("battery.beside.chemistry=lfp"));
    c.put("frost_charge", List.of("battery.chemistry=lfp", "weather.colder_by=10 K"));
    c.put(
        "fan_set_point",
        List.of("controller.heat.set_point=35.5 degC", "controller.fan.off_below=36 degC"));
    c.put("no_cutout", List.of("heater.cut_out=self_resetting"));
    c.put("cutout_band", List.of("heater.cut_out_tolerance=15 K"));
    c.put("fail_off", List.of("heater.fails_off=no"));
    c.put("battery_gas", List.of("battery.box_vent=0 cm2"));
    c.put("returns_by_itself", List.of("battery.chemistry=lfp", "battery.board.returns=hand"));
    c.put("cutout_before_standby", List.of("pv.load_output=true", "pv.load_cut=12 V"));
    c.put("broodless_heated", List.of("colony.brood_cells=0"));
    c.put(
        "probe_place", List.of("probe.brood_a.place=box_air", "controller.heat.set_point=24 degC"));
    c.put("plate_surface", List.of("heater.plate_area=100 cm2"));
    c.put("bee_contact", List.of("probe.pan.fitted=false", "heater.power=40 W"));
    c.put("heater_volts", List.of("battery.nominal_volts=24 V", "heater.rated_volts=12 V"));
    c.put(
        "inverter_small",
        List.of("inverter.rated_power=20 W", "load.0.power=50 W", "load.0.supply=inverter"));
    c.put(
        "inverter_asleep",
        List.of(
            "inverter.rated_power=100 W",
            "inverter.search=true",
            "load.0.power=5 W",
            "load.0.supply=inverter"));
    c.put(
        "inverter_high_volts",
        List.of("heater.supply=inverter", "inverter.high_cut=15 V", "inverter.high_return=14.5 V"));
    c.put("frost_low_charge", List.of("battery.initial_charge=50 %", "weather.colder_by=8 K"));
    c.put("keeps_latches", List.of("controller.keeps_latches=no"));
    return c;
  }

  private static Program audit(List<String> settings, String... more) {
    List<String> args = new ArrayList<>();
    args.addAll(List.of("audit", FOLDER.resolve("late-split.toml").toString()));
    for (String s : settings) {
      args.addAll(List.of("--set", s));
    }
    args.addAll(List.of(more));
    return Program.run(args.toArray(String[]::new));
  }

  private static Map<String, JsonNode> findings(List<String> settings) throws IOException {
    Program p = audit(settings, "--json");
    assertTrue(p.code == 0 || p.code == 1, settings + ": " + p.err);
    JsonNode root = new ObjectMapper().readTree(p.out);
    Map<String, JsonNode> byId = new TreeMap<>();
    int stops = 0;
    for (JsonNode f : root.get("findings")) {
      byId.put(f.get("id").asText(), f);
      stops += f.get("severity").asText().equals("stop") ? 1 : 0;
      for (String field : List.of("title", "arithmetic", "remedy", "source")) {
        assertFalse(f.get(field).asText().isBlank(), field);
      }
    }
    assertEquals(stops, root.get("stops").asInt());
    assertEquals(stops > 0 ? 1 : 0, p.code);
    return byId;
  }

  private static List<String> plus(List<String> a, List<String> b) {
    return Stream.concat(a.stream(), b.stream()).toList();
  }

  private static List<String> texts(JsonNode array) {
    List<String> texts = new ArrayList<>();
    array.forEach(n -> texts.add(n.asText()));
    return texts;
  }

  @Test
  void everyCauseIsFoundAndEveryRemedyCures() throws IOException {
    Set<String> faults = new TreeSet<>();
    Set<String> sound = findings(SOUND).keySet();
    for (Map.Entry<String, List<String>> cause : causes().entrySet()) {
      String id = cause.getKey();
      if (sound.contains(id)) {
        faults.add(id + " is found on the sound rig");
      }
      List<String> settings = plus(SOUND, cause.getValue());
      JsonNode found = findings(settings).get(id);
      if (found == null) {
        faults.add(id + " is not found with " + cause.getValue());
        continue;
      }
      List<String> cure = texts(found.get("set"));
      for (String s : cure) {
        assertTrue(found.get("remedy").asText().contains(s.substring(0, s.indexOf('='))), s);
      }
      Program cured = audit(plus(settings, cure), "--json");
      if (cured.code > 1) {
        faults.add(id + ": its remedy is refused: " + cured.err);
      } else if (findings(plus(settings, cure)).containsKey(id)) {
        faults.add(id + " stays with " + cure);
      }
    }
    assertEquals("", String.join("\n", faults));
  }

  @Test
  void theRemediesOfTheShippedRigsCure() throws IOException {
    Set<String> faults = new TreeSet<>();
    try (Stream<Path> files = Files.list(FOLDER)) {
      for (Path file : files.filter(f -> f.toString().endsWith(".toml")).sorted().toList()) {
        Program p = Program.run("audit", file.toString(), "--json");
        for (JsonNode f : new ObjectMapper().readTree(p.out).get("findings")) {
          List<String> args = new ArrayList<>(List.of("audit", file.toString(), "--json"));
          texts(f.get("set")).forEach(s -> args.addAll(List.of("--set", s)));
          Program cured = Program.run(args.toArray(String[]::new));
          if (cured.code > 1 || cured.out.contains("\"id\" : " + f.get("id"))) {
            faults.add(file.getFileName() + ": " + f.get("id") + " " + f.get("set") + cured.err);
          }
        }
      }
    }
    assertEquals("", String.join("\n", faults));
  }

  /** The head of the scenario says that the inverter's idle draw is what is wrong. */
  @Test
  void theInverterFedRigFailsAndTheSeasonPasses() throws IOException {
    Program bad = Program.run("audit", FOLDER.resolve("inverter-fed.toml").toString());
    assertEquals(1, bad.code);
    assertTrue(bad.out.contains("STOP  inverter_idle_share"), bad.out);
    assertTrue(bad.out.contains("9.0 W x 24 h = 216 Wh"), bad.out);
    Program good = Program.run("audit", FOLDER.resolve("eight-weeks.toml").toString());
    assertEquals(0, good.code, good.out);
  }

  /** Table 6.1 of the sums by hand: 20 W at 12 V are 7.2 ohm; 3 m of 2.5 mm² 41.4, contacts 10. */
  @Test
  void theDropIsThatOfOhmsLaw() throws IOException {
    JsonNode f = findings(plus(SOUND, causes().get("voltage_drop"))).get("voltage_drop");
    // 2 x 3 m x 0.017241 / 0.75 = 137.9 mOhm + 10; element 2.4 ohm; 12.2 V / 2.548 ohm = 4.79 A
    assertTrue(f.get("arithmetic").asText().contains("137.9 mOhm"), f.toString());
    assertTrue(f.get("arithmetic").asText().contains("4.79 A"), f.toString());
  }

  @Test
  void badInputRunsNothing() {
    assertEquals(2, audit(List.of("heater.cut_out=maybe")).code);
    assertEquals(2, Program.run("audit").code);
    assertEquals(2, audit(List.of(), "--weather", "no-such-file.csv").code);
  }
}
