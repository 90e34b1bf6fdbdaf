package org.broodbench.controller;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** SPEC.md and the code name the same settings, bounds, defaults, codes and rules. */
@Tag("fast")
class SpecTest {
  private final SpecTables spec = SpecTables.read();

  @Test
  void settingsTableEqualsTheCode() {
    List<Map<String, String>> rows = spec.headed("setting", "lowest", "highest", "default");
    assertEquals(Setting.values().length, rows.size());
    for (int i = 0; i < rows.size(); i++) {
      Map<String, String> row = rows.get(i);
      Setting setting = Setting.values()[i];
      String key = setting.key();
      assertEquals(key, row.get("setting"));
      assertEquals(setting.low(), Integer.parseInt(row.get("lowest")), key);
      assertEquals(setting.high(), Integer.parseInt(row.get("highest")), key);
      assertTrue(!row.get("meaning").isEmpty(), key);
      for (ProbePlace place : ProbePlace.values()) {
        for (Chemistry chemistry : Chemistry.values()) {
          String cell = row.get("default");
          if (place == ProbePlace.NEST_EDGE && !row.get("nest edge").isEmpty()) {
            cell = row.get("nest edge");
          }
          if (place == ProbePlace.BOX_AIR && !row.get("box air").isEmpty()) {
            cell = row.get("box air");
          }
          if (chemistry == Chemistry.LITHIUM_IRON_PHOSPHATE && !row.get("lithium").isEmpty()) {
            cell = row.get("lithium");
          }
          assertEquals(
              Integer.parseInt(cell), Settings.defaults(place, chemistry).get(setting), key);
        }
      }
    }
  }

  @Test
  void levelsTableEqualsTheCode() {
    List<Map<String, String>> rows = spec.named("levels");
    for (int level = ShedLevel.FULL; level <= ShedLevel.STANDBY; level++) {
      assertEquals(ShedLevel.name(level), rows.get(level).get("level"));
      if (level > ShedLevel.FULL) {
        assertEquals(
            SettingsCheck.enter(level, false).key(), rows.get(level).get("enter") + "_milli_v");
        assertEquals(
            SettingsCheck.leave(level, true).key(), rows.get(level).get("leave") + "_permille");
      }
    }
  }

  @Test
  void everyDefaultSetIsLegal() {
    for (ProbePlace place : ProbePlace.values()) {
      for (Chemistry chemistry : Chemistry.values()) {
        assertEquals(List.of(), Settings.defaults(place, chemistry).problems());
      }
    }
  }

  @Test
  void reasonsTableEqualsTheCode() {
    List<Map<String, String>> rows = spec.headed("code", "reason", "kind of stop");
    assertEquals(Reason.LAST + 1, rows.size());
    for (int code = 0; code < rows.size(); code++) {
      assertEquals(Integer.toString(code), rows.get(code).get("code"));
      assertEquals(Reason.name(code), rows.get(code).get("reason"));
      if (code <= Reason.BLIND) {
        assertEquals(Reason.stopKind(code), rows.get(code).get("kind of stop"));
      }
    }
  }

  @Test
  void alarmsTableEqualsTheCode() {
    List<Map<String, String>> rows = spec.headed("bit", "alarm", "raise", "clear");
    assertEquals(Alarm.COUNT, rows.size());
    for (int bit = 0; bit < rows.size(); bit++) {
      assertEquals(Integer.toString(bit), rows.get(bit).get("bit"));
      assertEquals(Alarm.name(bit), rows.get(bit).get("alarm"));
    }
  }

  @Test
  void everyRuleThatCodeOrTestsCiteStandsInTheSpecification() throws IOException {
    Set<String> defined = new TreeSet<>();
    Matcher bold = Pattern.compile("\\*\\*([A-Z]\\d+)\\*\\*").matcher(SpecTables.text());
    while (bold.find()) {
      defined.add(bold.group(1));
    }
    for (Map<String, String> row : spec.named("supply")) {
      defined.add(row.get("rule"));
    }
    for (String table : List.of("thermostat", "relay", "limits")) {
      spec.named(table).forEach(row -> defined.add(row.get("rule")));
    }
    Set<String> cited = new TreeSet<>();
    Pattern rule = Pattern.compile("[Rr]ules? ([A-Z]\\d+)(?: (?:to|and) ([A-Z]\\d+))?");
    try (Stream<Path> files = Files.walk(Path.of("src"))) {
      for (Path file : files.filter(f -> f.toString().endsWith(".java")).toList()) {
        Matcher matcher = rule.matcher(Files.readString(file));
        while (matcher.find()) {
          cited.add(matcher.group(1));
          if (matcher.group(2) != null) {
            cited.add(matcher.group(2));
          }
        }
      }
    }
    assertTrue(cited.size() > 30, "cited " + cited);
    cited.removeAll(defined);
    assertEquals(Set.of(), cited);
  }
}
