package org.broodbench.input;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.broodbench.controller.Chemistry;
import org.broodbench.controller.ProbePlace;
import org.broodbench.controller.Readings;
import org.broodbench.controller.Sample;
import org.broodbench.controller.Setting;
import org.broodbench.controller.SettingProblem;
import org.broodbench.controller.Settings;
import org.broodbench.firmware.Channel;
import org.broodbench.firmware.Script;
import org.broodbench.firmware.Tick;

/**
 * Reads vector files, format {@code broodbench-vector/1}. Columns may stand in any order and
 * expected commands are passed over: the reference is asked anew.
 */
public final class VectorReader {
  private static final String FORMAT = "broodbench-vector/1";
  private static final String[] SWITCHES = {
    "charger_full", "shore_present", "button", "test_request"
  };

  private record Part(String name, List<Tick> ticks) {}

  private final List<Part> parts = new ArrayList<>();
  private final String file;
  private final List<Problem> problems = new ArrayList<>();
  private final Map<String, Integer> columns = new HashMap<>();
  private final List<Tick> ticks = new ArrayList<>();
  private final Map<Setting, Integer> values = new HashMap<>();
  private String name = "";
  private ProbePlace place = ProbePlace.BROOD_COMB;
  private Chemistry chemistry = Chemistry.AGM;
  private String[] cells = new String[0];
  private int line;

  private VectorReader(String file) {
    this.file = file;
  }

  /**
   * Reads a file.
   *
   * @throws BadInput with every problem found, at most twenty
   */
  public static List<Script> read(Path path) {
    return new VectorReader(path.toString()).read(PlainText.lines(path, "a vector file"));
  }

  private List<Script> read(List<String> rows) {
    for (String row : rows) {
      line++;
      cells = row.split(",", -1);
      if (!row.isBlank()) {
        row();
      }
      if (line == 1 && !problems.isEmpty() || problems.size() >= 20) {
        break;
      }
    }
    Settings settings = Settings.defaults(place, chemistry);
    for (Map.Entry<Setting, Integer> value : values.entrySet()) {
      settings = settings.with(value.getKey(), value.getValue());
    }
    if (problems.isEmpty()) {
      for (SettingProblem p : settings.problems()) {
        problems.add(
            new Problem(file, 0, 0, p.setting(), p.foundText(), p.allowedText(), p.hint()));
      }
    }
    if (problems.isEmpty() && ticks.isEmpty() && parts.isEmpty()) {
      problem(0, "", "no step", "at least one row 'step'");
    }
    if (!problems.isEmpty()) {
      throw new BadInput(problems);
    }
    end("");
    List<Script> scripts = new ArrayList<>();
    for (Part part : parts) {
      scripts.add(new Script.Fixed(part.name(), settings, part.ticks()));
    }
    return scripts;
  }

  /** A vector ends; the next one has this name. */
  private void end(String nextName) {
    if (!ticks.isEmpty()) {
      parts.add(new Part(name.isEmpty() ? file : name, List.copyOf(ticks)));
    }
    ticks.clear();
    name = nextName;
  }

  private void problem(int column, String key, String found, String allowed) {
    problems.add(new Problem(file, line, column, key, found, allowed, ""));
  }

  private String cell(int index) {
    return index < cells.length ? cells[index].strip() : "";
  }

  private void row() {
    if (line == 1) {
      if (!cell(0).equals("format") || !cell(1).equals(FORMAT)) {
        problem(1, "format", cells[0], "format," + FORMAT);
      }
      return;
    }
    switch (cell(0)) {
      case "name" -> name = cell(1);
      case "place" -> place = word(ProbePlace.class, place);
      case "chemistry" -> chemistry = word(Chemistry.class, chemistry);
      case "setting" -> setting(false);
      case "change" -> setting(true);
      case "columns" -> columns();
      case "begin" -> end(cell(1));
      case "restart" -> ticks.add(Tick.restart(false));
      case "power_loss" -> ticks.add(Tick.restart(true));
      case "step" -> step();
      default ->
          problem(
              1,
              "",
              cell(0),
              "name, place, chemistry, setting, columns, begin, step, restart, power_loss or change");
    }
  }

  private <E extends Enum<E>> E word(Class<E> type, E other) {
    try {
      return Enum.valueOf(type, cell(1).toUpperCase(Locale.ROOT));
    } catch (IllegalArgumentException e) {
      List<String> words = new ArrayList<>();
      for (E constant : type.getEnumConstants()) {
        words.add(constant.name().toLowerCase(Locale.ROOT));
      }
      problem(1 + cells[0].length() + 1, cell(0), cell(1), String.join(", ", words));
      return other;
    }
  }

  private void setting(boolean change) {
    Setting found = null;
    for (Setting setting : Setting.values()) {
      if (setting.key().equals(cell(1))) {
        found = setting;
      }
    }
    if (found == null) {
      problem(1 + cells[0].length() + 1, cell(1), cell(1), "a setting of SPEC.md, section 15");
      return;
    }
    Integer value = whole(2, found.key(), false);
    if (value == null) {
      return;
    }
    if (change) {
      ticks.add(Tick.setting(found, value));
    } else {
      values.put(found, value);
    }
  }

  private void columns() {
    for (int i = 1; i < cells.length; i++) {
      columns.put(cell(i), i);
    }
    for (Channel channel : Channel.values()) {
      if (!columns.containsKey(channel.key())) {
        problem(0, channel.key(), "no such column", "a column for each reading, even if empty");
      }
    }
    if (!columns.containsKey("now_millis")) {
      problem(0, "now_millis", "no such column", "the counter of each step");
    }
  }

  /** A whole number of 32 bits; the counter may be given without sign. */
  private Integer whole(int index, String key, boolean unsigned) {
    try {
      return unsigned ? Integer.parseUnsignedInt(cell(index)) : Integer.parseInt(cell(index));
    } catch (NumberFormatException e) {
      int column = 1;
      for (int i = 0; i < index && i < cells.length; i++) {
        column += cells[i].length() + 1;
      }
      problem(column, key, cell(index), "a whole number of 32 bits");
      return null;
    }
  }

  private void step() {
    if (columns.isEmpty()) {
      problem(1, "", "step", "the row 'columns' before the first step");
      return;
    }
    Readings readings = new Readings();
    for (Channel channel : Channel.values()) {
      Integer at = columns.get(channel.key());
      Sample sample = channel.of(readings);
      if (at != null && !cell(at).isEmpty()) {
        Integer value = whole(at, channel.key(), false);
        if (value != null) {
          sample.put(value);
        }
        String ageKey = channel.name().toLowerCase(Locale.ROOT) + "_age_millis";
        Integer age = columns.get(ageKey);
        if (age != null && !cell(age).isEmpty()) {
          Integer millis = whole(age, ageKey, false);
          sample.ageMillis = millis == null ? 0 : millis;
        }
      }
    }
    readings.chargerFull = flag(SWITCHES[0]);
    readings.shorePresent = flag(SWITCHES[1]);
    readings.button = flag(SWITCHES[2]);
    readings.testRequest = flag(SWITCHES[3]);
    Integer now = whole(columns.getOrDefault("now_millis", 1), "now_millis", true);
    if (now != null) {
      ticks.add(Tick.step(now, readings));
    }
  }

  private boolean flag(String key) {
    Integer at = columns.get(key);
    if (at == null || cell(at).isEmpty()) {
      return false;
    }
    Integer value = whole(at, key, false);
    return value != null && value != 0;
  }
}
