package org.broodbench.input;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

class ScenarioEditorTest {
  private static final String TEXT =
      """
      # A case for the editor.
      title = "A"   # name

      [heat]
      # the keeper's own words
      set_point = "32 degC"  # warm

      [[box]]
      height = "230 mm"
      [[box]]
      """;

  private final ScenarioEditor editor = new ScenarioEditor(SampleKeys.keys());

  @Test
  void changesAValueAndKeepsAllElse() {
    assertEquals(
        TEXT.replace("32 degC", "33.5 degC"), editor.set(TEXT, "heat.set_point", "33.5 degC"));
    assertEquals(TEXT.replace("230", "300"), editor.set(TEXT, "box.0.height", "300 mm"));
  }

  @Test
  void theDemoKeepsEveryOtherByte() throws IOException {
    String demo = Files.readString(Path.of("..", "scenarios", "late-split.toml"));
    ScenarioEditor real = new ScenarioEditor(ScenarioKeys.all());
    String changed = real.set(demo, "controller.heat.set_point", "32.4 degC");
    changed = real.set(changed, "event.1.duration", "7 min");
    assertEquals(
        demo.replace("\"33.5 degC\"", "\"32.4 degC\"")
            .replace("duration = \"5 min\"", "duration = \"7 min\""),
        changed);
  }

  @Test
  void addsWhatIsNotThere() {
    String with = editor.set(TEXT, "battery.capacity", "100 Ah");
    with = editor.set(with, "battery.cells", "12");
    with = editor.set(with, "box.1.height", "170 mm");
    ScenarioText.Reading reading = ScenarioText.read(SampleKeys.keys(), "a", with, List.of());
    assertEquals(List.of(), reading.problems());
    assertEquals(12, reading.values().integer("battery.cells"));
    assertEquals(0.17, reading.values().rows("box").get(1).number("height"), 1e-12);
  }

  @Test
  void refusesWhatTheReaderWouldRefuse() {
    BadInput unknown =
        assertThrows(BadInput.class, () -> editor.set(TEXT, "heat.setpoint", "32 degC"));
    assertEquals("did you mean heat.set_point?", unknown.problems().get(0).hint());
    BadInput hot =
        assertThrows(BadInput.class, () -> editor.set(TEXT, "heat.set_point", "50 degC"));
    assertEquals("10 degC to 38 degC", hot.problems().get(0).allowed());
    assertThrows(BadInput.class, () -> editor.set(TEXT, "box.2.height", "300 mm"));
    assertThrows(BadInput.class, () -> editor.set("x = ", "heat.set_point", "32 degC"));
  }
}
