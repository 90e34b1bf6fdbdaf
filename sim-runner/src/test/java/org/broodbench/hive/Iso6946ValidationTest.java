package org.broodbench.hive;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.broodbench.checks.CheckRows;
import org.broodbench.checks.CheckRows.Row;
import org.broodbench.matter.Material;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Sums of the standard against its tables, a worked wall, and boxes that were measured. */
class Iso6946ValidationTest {

  /** A timber-framed wall with studs through its insulation; source beside each row. */
  @Test
  void bridgedWall() {
    CheckRows.of("HL-BRE").run(6, Iso6946ValidationTest::framed);
  }

  private static double framed(Row r) {
    double[] layers = {0.132, 0.090, 0.146, 3.333, 0.100};
    double share = 0.095;
    double surfaces = 0.040 + 0.130;
    switch (r.id().substring(7)) {
      case "R1":
        return Iso6946.lowerM2KW(wall(layers, 0), surfaces);
      case "R2":
        layers[3] = 1.077;
        return Iso6946.lowerM2KW(wall(layers, 0), surfaces);
      case "RU":
        return Iso6946.upperM2KW(wall(layers, share), surfaces);
      case "RL":
        return Iso6946.lowerM2KW(wall(layers, share), surfaces);
      case "RT":
        return Iso6946.totalM2KW(wall(layers, share), HeatFlow.SIDEWAYS);
      default:
        return Iso6946.transmittanceWM2K(wall(layers, share), HeatFlow.SIDEWAYS);
    }
  }

  /** Layers of a decimetre with the given resistances; the fourth with studs of 1.077 m²K/W. */
  private static List<Layer> wall(double[] m2kw, double studs) {
    List<Layer> layers = new ArrayList<>();
    for (int i = 0; i < m2kw.length; i++) {
      layers.add(
          new Layer(
              new Material("layer", 0.1 / m2kw[i], 500, 1600),
              0.1,
              new Material("stud", 0.1 / 1.077, 500, 1600),
              i == 3 ? studs : 0));
    }
    return layers;
  }

  /** What the run builds of a bridged wall has the same resistance and heat capacity. */
  @Test
  void layersWithoutBridgesKeepResistanceAndCapacity() {
    List<Layer> bridged =
        List.of(Hives.PINE, new Layer(Material.WOOL, 0.06, Material.SOFTWOOD, 0.12), Hives.EPS_50);
    List<Layer> even = Iso6946.withoutBridges(bridged, HeatFlow.UP);
    assertEquals(
        Iso6946.totalM2KW(bridged, HeatFlow.UP), Iso6946.totalM2KW(even, HeatFlow.UP), 1e-12);
    assertEquals(bridged.get(1).capacityJM2K(), even.get(1).capacityJM2K(), 1e-6);
    double plain =
        Iso6946.totalM2KW(
            List.of(Hives.PINE, new Layer(Material.WOOL, 0.06), Hives.EPS_50), HeatFlow.UP);
    assertTrue(Iso6946.totalM2KW(bridged, HeatFlow.UP) < plain - 0.1);
  }

  /** ISO 6946:2017, table 8: unventilated air layers, and between its rows. */
  @ParameterizedTest
  @CsvSource({
    "0, SIDEWAYS, 0", "5, UP, 0.11", "7, DOWN, 0.13", "10, SIDEWAYS, 0.15", "15, UP, 0.16",
    "25, SIDEWAYS, 0.18", "50, DOWN, 0.21", "300, DOWN, 0.23", "20, DOWN, 0.18", "500, UP, 0.16"
  })
  void airLayers(double mm, HeatFlow flow, double m2kw) {
    assertEquals(m2kw, Iso6946.airLayerM2KW(mm / 1000, flow), 1e-12);
    if (mm > 0) {
      assertEquals(m2kw, Iso6946.airLayer(mm / 1000, flow).resistanceM2KW(), 1e-12);
    }
  }

  /**
   * Sums of the standard for common bodies, mid-plane areas, in W/K: one and two deeps of 19 mm
   * pine, a medium, dense hardwood, pine with 30 and 50 mm of polystyrene, polystyrene 40 mm alone.
   */
  @ParameterizedTest
  @CsvSource({
    "0.13, 19, 0, 0.244, 1, 2.57",
    "0.13, 19, 0, 0.244, 2, 3.92",
    "0.13, 19, 0, 0.168, 1, 2.14",
    "0.20, 19, 0, 0.244, 1, 3.06",
    "0.13, 19, 30, 0.244, 1, 0.69",
    "0.13, 19, 50, 0.244, 1, 0.47",
    "0.033, 40, 0, 0.244, 1, 0.62"
  })
  void commonBodies(
      double wmk, double mm, double insulationMm, double heightM, int boxes, double wk) {
    Material material = new Material("wood", wmk, 500, 1600);
    List<Layer> layers = new ArrayList<>();
    layers.add(new Layer(material, mm / 1000));
    if (insulationMm > 0) {
      layers.add(new Layer(Material.EPS, insulationMm / 1000));
    }
    HiveSpec hive = Hives.closed(layers, heightM, boxes, 0);
    assertEquals(wk, Iso6946.hiveWK(hive), 0.02);
    if (boxes == 1) {
      Outside outside = Hives.outside(0);
      HiveModel m = Hives.model(hive, Hives.NO_BEES, outside);
      Hives.run(m, 36_000, 3_600_000, 10, outside);
      assertEquals(wk, 10 / m.view().nodeC(m.view().broodAirNode(), 1), 0.02);
    }
  }

  /**
   * Measured in still air, closed and empty: a cedar box 2.56 to 2.59 W/K, polystyrene boxes 0.91
   * to 1.31 W/K (D. Mitchell, Int. J. Biometeorol. 60 (2016), as a technical note reports them).
   * The sum for polystyrene needs an edge factor of 1.4 to 2; the default of 1.3 stays below.
   */
  @Test
  void measuredBoxes() {
    double pine = Iso6946.hiveWK(Hives.closed(List.of(Hives.PINE), 0.244, 1, 0));
    assertTrue(pine >= 2.54 && pine <= 2.61, "pine " + pine);
    double foam =
        Iso6946.hiveWK(Hives.closed(List.of(new Layer(Material.DENSE_EPS, 0.040)), 0.244, 1, 0));
    assertTrue(0.91 / foam > 1.3 && 1.31 / foam < 2.05, "polystyrene " + foam);
  }

  /** The edge factor makes insulated faces worse, and bare ones not. */
  @Test
  void edgesCountOnInsulatedFacesOnly() {
    HiveSpec bare = withEdges(List.of(Hives.PINE), 1.3);
    assertEquals(
        Iso6946.hiveWK(Hives.closed(List.of(Hives.PINE), 0.244, 1, 0)),
        Iso6946.hiveWK(bare),
        1e-12);
    double insulated = Iso6946.hiveWK(withEdges(List.of(Hives.PINE, Hives.EPS_50), 1.3));
    assertEquals(1.27, insulated / 0.473, 0.03);
  }

  private static HiveSpec withEdges(List<Layer> layers, double factor) {
    return new HiveSpec(
        0.467,
        0.375,
        Collections.nCopies(1, new BoxSpec(0.244, 10, 0)),
        0,
        layers,
        layers,
        layers,
        factor,
        0.6,
        0,
        0,
        0,
        0.5,
        0.6,
        0.3);
  }

  /** ISO 10456:2007: 10 % of water by volume make polystyrene conduct e^0.4 = 1.49 times better. */
  @Test
  void wetInsulationConductsBetter() {
    Material wet = Material.EPS.wetted(0.1);
    assertEquals(1.4918, wet.conductivityWMK() / Material.EPS.conductivityWMK(), 1e-4);
    assertEquals(Material.EPS.heatCapacityJM3K() + 0.1 * 4.19e6, wet.heatCapacityJM3K(), 0.01e6);
  }
}
