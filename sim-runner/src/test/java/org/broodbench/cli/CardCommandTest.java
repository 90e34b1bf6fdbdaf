package org.broodbench.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CardCommandTest {
  @TempDir Path folder;

  /** What the card says of days and hours hangs together. */
  @Test
  void theCardOfTheDemo() throws IOException {
    Program run = Program.run("card", "--days", "8", "--out", folder.toString(), "--json");
    assertEquals(0, run.code, run.err);
    JsonNode card = new ObjectMapper().readTree(run.out);
    assertEquals("broodbench-card/1", card.get("format").textValue());
    int nights = 0;
    double lowest = 99;
    for (JsonNode sort : card.get("expected")) {
      nights += sort.get("nights").intValue();
      lowest = Math.min(lowest, sort.get("low_c").get("low").doubleValue());
      assertTrue(sort.get("dusk_v").get("low").doubleValue() > 11, sort.toString());
      assertTrue(sort.get("dusk_v").get("high").doubleValue() < 15, sort.toString());
      assertTrue(sort.get("night_heater_h").get("high").doubleValue() <= 12, sort.toString());
    }
    assertEquals(7, nights);
    // more volts at dusk never mean less heat, at any low
    JsonNode tonight = card.get("tonight");
    double before = -1;
    double low = 99;
    for (JsonNode a : tonight) {
      if (a.get("low_c").doubleValue() != low) {
        low = a.get("low_c").doubleValue();
        before = -1;
      }
      double heat = a.get("heat_h").get("high").doubleValue();
      assertTrue(heat >= before - 1e-9, a.toString());
      before = heat;
    }
    assertTrue(low > lowest, "the table reaches the mild nights");
    for (JsonNode h : card.get("after_harvest")) {
      assertTrue(
          h.get("controller_h").get("low").doubleValue()
              >= h.get("heat_h").get("low").doubleValue(),
          h.toString());
      assertTrue(
          h.get("full_heat_h").get("low").doubleValue() < h.get("heat_h").get("low").doubleValue(),
          "the set point is lowered before the heat is shed: " + h);
    }
    String page = Files.readString(folder.resolve("card.html"));
    for (String part :
        new String[] {
          "°F", "Odd, or act now", "33.5 °C (92.3 °F)", "thermal cut-out", "Cautions"
        }) {
      assertTrue(page.contains(part), part);
    }
    byte[] pdf = Files.readAllBytes(folder.resolve("card.pdf"));
    assertTrue(new String(pdf, 0, 5, StandardCharsets.US_ASCII).startsWith("%PDF-"));
    assertEquals(1, pages(folder.resolve("card.pdf")), "one sheet to hang up");
  }

  /**
   * A full battery heats a mild night; an empty one does not; the answer is an exit code as well.
   */
  @Test
  void tonight() throws IOException {
    JsonNode full = tonight(0, "12.9", "4");
    assertTrue(
        full.get("heat_h").get("low").doubleValue() >= full.get("night_h").doubleValue() - 0.1);
    JsonNode empty = tonight(1, "11.9 V", "14 degF");
    assertEquals(-10, empty.get("low_c").doubleValue(), 1e-9);
    assertTrue(empty.get("heat_h").get("high").doubleValue() < 1, empty.toString());
    assertTrue(empty.get("dawn_level").get("high").doubleValue() >= 3, empty.toString());
  }

  private static JsonNode tonight(int code, String volts, String low) throws IOException {
    Program run = Program.run("card", "--days", "5", "--tonight", volts, low, "--json");
    assertEquals(code, run.code, run.err);
    return new ObjectMapper().readTree(run.out);
  }

  @Test
  void mistakesAreToldTogetherAndNothingIsWritten() {
    Path out = folder.resolve("none");
    Program run =
        Program.run("card", "--days", "1", "--tonight", "12 km", "200", "--out", out.toString());
    assertEquals(2, run.code);
    for (String part : new String[] {"--days", "--tonight VOLTS", "--tonight LOW", "3 problems"}) {
      assertTrue(run.err.contains(part), run.err);
    }
    assertFalse(Files.exists(out));
  }

  /** With the mains taken away a battery that cannot feed the heater for a week is not ready. */
  @Test
  void theSeasonPlanSaysWhenTheBatteryDoesAlone() throws IOException {
    Path rig = folder.resolve("roof.toml");
    try (java.io.InputStream in =
        CardCommandTest.class.getResourceAsStream("/scenarios/rooftop-mains.toml")) {
      Files.write(rig, in.readAllBytes());
    }
    JsonNode plan = plan(rig);
    assertTrue(plan.get(1).textValue().contains("mains taken away"), plan.toString());
    assertEquals(2, pages(folder.resolve("plan/card.pdf")), "the plan on a sheet of its own");
    assertTrue(plan.get(1).textValue().contains("not within these weeks"), plan.toString());
    JsonNode without = plan(rig, "--set", "heater.power=0 W", "--set", "battery.capacity=300 Ah");
    assertTrue(without.get(1).textValue().contains("at once"), without.toString());
  }

  private static int pages(Path pdf) throws IOException {
    try (PDDocument document = Loader.loadPDF(Files.readAllBytes(pdf))) {
      return document.getNumberOfPages();
    }
  }

  private JsonNode plan(Path rig, String... more) throws IOException {
    List<String> args =
        new ArrayList<>(List.of("card", rig.toString(), "--days", "3", "--plan", "2", "--json"));
    args.addAll(List.of("--out", folder.resolve("plan").toString()));
    args.addAll(List.of(more));
    Program run = Program.run(args.toArray(String[]::new));
    assertEquals(0, run.code, run.err);
    return new ObjectMapper().readTree(run.out).get("season_plan");
  }
}
