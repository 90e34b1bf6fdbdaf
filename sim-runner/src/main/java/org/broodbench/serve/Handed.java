package org.broodbench.serve;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.broodbench.input.ScenarioEditor;
import org.broodbench.input.ScenarioKeys;
import org.broodbench.input.ScenarioReader;

/** What the keeper takes away from the page: the same rig as a scenario file, or as a command. */
final class Handed {
  private Handed() {}

  /**
   * The scenario's file with settings put in; comments stay.
   *
   * @throws org.broodbench.input.BadInput where a setting cannot stand in this file
   */
  static String scenario(Bench.Source source, List<String> settings) {
    Map<String, String> last = new LinkedHashMap<>();
    List<String> all = new ArrayList<>(source.settings());
    all.addAll(settings);
    for (String s : all) {
      int equals = s.indexOf('=');
      last.put(s.substring(0, equals).strip(), s.substring(equals + 1).strip());
    }
    String text = new String(source.text(), StandardCharsets.UTF_8);
    int there = text.split("(?m)^\\s*\\[\\[\\s*event\\s*]]", -1).length - 1;
    Map<Integer, Map<String, String>> rows = new TreeMap<>();
    ScenarioEditor editor = new ScenarioEditor(ScenarioKeys.all());
    for (Map.Entry<String, String> e : last.entrySet()) {
      String[] parts = e.getKey().split("\\.");
      boolean event = parts.length == 3 && parts[0].equals("event") && parts[1].matches("\\d{1,4}");
      if (event && Integer.parseInt(parts[1]) >= there) {
        rows.computeIfAbsent(Integer.parseInt(parts[1]), n -> new LinkedHashMap<>())
            .put(parts[2], e.getValue());
      } else {
        text = editor.set(text, e.getKey(), e.getValue());
      }
    }
    StringBuilder out = new StringBuilder(text);
    for (Map<String, String> row : rows.values()) {
      out.append(out.charAt(out.length() - 1) == '\n' ? "" : "\n").append("\n[[event]]\n");
      row.forEach(
          (key, value) ->
              out.append(key)
                  .append(" = \"")
                  .append(value.replace("\\", "\\\\").replace("\"", "\\\""))
                  .append("\"\n"));
    }
    // what stands in the file must read by itself, without what the command line lets pass
    ScenarioReader.read(source.name(), out.toString().getBytes(StandardCharsets.UTF_8), List.of());
    return out.toString();
  }

  /** The command line that gives the same run. */
  static String command(Bench.Source source, List<String> settings) {
    StringBuilder out = new StringBuilder("broodbench run");
    if (source.folder() != null) {
      out.append(' ').append(quoted(source.name()));
    }
    for (Path w : source.weather()) {
      out.append(" --weather ").append(quoted(w.toString()));
    }
    List<String> all = new ArrayList<>(source.settings());
    all.addAll(settings);
    for (String s : all) {
      out.append(" --set ").append(quoted(s));
    }
    return out.toString();
  }

  /** A word of a shell. */
  private static String quoted(String word) {
    return word.matches("[\\w./=%+:@-]+") ? word : "'" + word.replace("'", "'\\''") + "'";
  }
}
