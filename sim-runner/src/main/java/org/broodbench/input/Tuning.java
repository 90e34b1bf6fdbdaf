package org.broodbench.input;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.broodbench.rig.Scenario;
import org.broodbench.rig.TuneSpec;

/** The tuning part of a scenario's text: what may change, and the text with other values. */
public final class Tuning {
  private Tuning() {}

  /**
   * What a search may change.
   *
   * @param scenario what was read from the same bytes and settings without problems
   */
  public static TuneSpec spec(Scenario scenario, byte[] bytes, List<String> settings) {
    ScenarioText.Reading reading =
        ScenarioText.read(
            ScenarioKeys.all(),
            scenario.fileName(),
            new String(bytes, StandardCharsets.UTF_8),
            settings);
    return TuneKeys.spec(reading.values(), scenario.controller().settings());
  }

  /** The text of a scenario with the values of knobs put in; comments and layout stay. */
  public static String text(String text, List<TuneSpec.Knob> knobs, List<Integer> counts) {
    ScenarioEditor editor = new ScenarioEditor(ScenarioKeys.all());
    String tuned = text;
    for (int i = 0; i < knobs.size(); i++) {
      tuned = editor.set(tuned, knobs.get(i).path(), shown(knobs.get(i), counts.get(i)));
    }
    return tuned;
  }

  /** Values of knobs as people write them, in their order: "33.5 degC". */
  public static List<String> shown(List<TuneSpec.Knob> knobs, List<Integer> counts) {
    List<String> words = new ArrayList<>();
    for (int i = 0; i < knobs.size(); i++) {
      words.add(shown(knobs.get(i), counts.get(i)));
    }
    return words;
  }

  private static String shown(TuneSpec.Knob knob, int count) {
    return SettingKeys.all().stream()
        .filter(k -> k.path().equals(knob.path()))
        .findFirst()
        .orElseThrow()
        .write(count);
  }
}
