package org.broodbench.input;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.broodbench.hive.HiveSpec;
import org.broodbench.hive.Iso6946;
import org.broodbench.hive.Pan;
import org.broodbench.hive.Separator;
import org.broodbench.rig.ProbeSpec;
import org.broodbench.rig.Scenario;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What hive, heater and probe keys make of a scenario. */
class HiveKeysTest {
  private static Scenario read(String more, String... settings) {
    return ScenarioReaderTest.read(ScenarioReaderTest.LEAST + more, settings);
  }

  @ParameterizedTest
  @CsvSource({
    "ten_frame, deep, 0.467, 0.375, 0.244, 10",
    "eight_frame, medium, 0.467, 0.311, 0.168, 8",
    "nucleus, shallow, 0.467, 0.197, 0.144, 5"
  })
  void commonBodies(
      String body, String size, double lengthM, double widthM, double heightM, int frames) {
    HiveSpec hive =
        read("[hive]\nbody = \"" + body + "\"\n[[hive.box]]\nsize = \"" + size + "\"\n").hive();
    assertEquals(lengthM, hive.lengthM(), 1e-9);
    assertEquals(widthM, hive.widthM(), 1e-9);
    assertEquals(heightM, hive.boxes().get(0).heightM(), 1e-9);
    assertEquals(frames, hive.boxes().get(0).frames());
  }

  @Test
  void aStackOfEverything() {
    HiveSpec hive =
        read("""
                [hive]
                front = "135 deg"
                wall_cover = "wrap"
                lid_cover = "screen"
                lid_absorptance = 0.9
                insulation = "40 mm"
                insulation_material = "wool"
                insulation_wetness = "5 %"
                insulation_battens = "10 %"
                [[hive.box]]
                dummy_boards = 2
                frames = 8
                [[hive.box]]
                size = "medium"
                below = "sheet"
                sheet_open_share = "35 %"
                [[hive.box]]
                use = "feeder"
                height = "100 mm"
                stores = "2 kg"
                below = "board"
                board_opening = "10 cm2"
                """)
            .hive();
    assertEquals(135, hive.frontDeg());
    assertEquals(List.of(10, 0), hive.boxes().stream().skip(1).map(b -> b.frames()).toList());
    assertEquals(2, hive.boxes().get(0).dummyBoards());
    assertEquals(Separator.Kind.SHEET, hive.boxes().get(1).below().kind());
    assertEquals(0.35, hive.boxes().get(1).below().openShare(), 1e-12);
    assertEquals(Separator.Kind.BOARD, hive.boxes().get(2).below().kind());
    assertEquals(1e-3, hive.boxes().get(2).below().openingM2(), 1e-12);
    assertEquals(0.010, hive.boxes().get(2).below().thicknessM(), 1e-12);
    assertEquals(4, hive.wall().size(), "wood, wool, air, felt");
    assertEquals(0.11, hive.wall().get(2).resistanceM2KW(), 1e-12);
    assertEquals(2, hive.lid().size(), "wood, wool");
    assertTrue(hive.lidSkin().screened());
    assertFalse(hive.wallSkin().screened());
    assertEquals(0.9, hive.lidSkin().solarAbsorptance(), 1e-12);
    assertEquals(0.6, hive.wallSkin().solarAbsorptance(), 1e-12);
    double wetK = hive.lid().get(1).material().conductivityWMK();
    assertEquals(0.039 * StrictMath.exp(4 * 0.05), wetK, 1e-9);
    assertTrue(Iso6946.hiveWK(hive) > 0.5 && Iso6946.hiveWK(hive) < 4);
  }

  /**
   * ISO 5167-2:2003, equation of Reader-Harris and Gallagher: a sharp orifice of 22.2 mm in a pipe
   * of 73.9 mm at a high Reynolds number has 0.5990 (flange taps, 0.12 kg/s of air of 1.165 kg/m³).
   */
  @Test
  void openingsAreSharpOrificesByDefault() {
    assertEquals(0.5990326, read("").hive().dischargeCoefficient(), 0.002);
  }

  @Test
  void thePanFollowsItsFilling() {
    Pan sand = read("").heater().pan();
    double depthM = 5 / (1600 * 0.15);
    assertEquals(4000, sand.heatJK(), 1e-9);
    assertEquals(0.27 * 0.15 / (depthM / 2), sand.throughWK(), 1e-3);
    assertEquals(1.5, sand.airWK(), 1e-9);
    assertFalse(Double.isInfinite(sand.throughWK()));
    Pan stirred = read("", "heater.fill=water", "heater.pan_area=1000 cm2").heater().pan();
    assertTrue(Double.isInfinite(stirred.throughWK()));
    assertEquals(5 * 4182, stirred.heatJK(), 1e-6);
    assertEquals(1.0, stirred.airWK(), 1e-9);
    assertEquals(0.09 / (1 / 170.0 + 1 / 300.0), stirred.fromPlateWK(), 1e-3);
  }

  @Test
  void probesHangWhereTheFileSays() {
    Scenario s =
        read(
            """
            [probe.brood_a]
            place = "nest_edge"
            nest_share = 0.4
            [probe.pan]
            place = "filling"
            [probe.top]
            fitted = true
            place = "lid"
            """);
    assertEquals(0.4, s.probe(ProbeSpec.Role.BROOD_A).nestShare(), 1e-12);
    assertEquals(ProbeSpec.Place.PAN_FILLING, s.probe(ProbeSpec.Role.PAN).place());
    assertEquals(ProbeSpec.Place.LID, s.probe(ProbeSpec.Role.TOP).place());
  }
}
