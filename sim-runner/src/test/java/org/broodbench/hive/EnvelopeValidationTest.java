package org.broodbench.hive;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import org.broodbench.checks.CheckRows;
import org.broodbench.checks.CheckRows.Row;
import org.broodbench.matter.Material;
import org.junit.jupiter.api.Test;

/**
 * Heat through walls, floor and lid of a whole simulated hive at rest, against sums by ISO 6946 and
 * measured boxes; source beside each row and test.
 */
class EnvelopeValidationTest {

  @Test
  void layers() {
    CheckRows.of("HL").run(15, EnvelopeValidationTest::compute);
  }

  private static double compute(Row r) {
    String kind = r.id().substring(3);
    switch (kind) {
      case "RSI-H":
        return HeatFlow.SIDEWAYS.surfaceM2KW();
      case "RSI-UP":
        return HeatFlow.UP.surfaceM2KW();
      case "RSI-DN":
        return HeatFlow.DOWN.surfaceM2KW();
      case "RSE":
        return outerResistance();
      default:
        break;
    }
    double outC = -10;
    Outside outside = Hives.outside(outC);
    HiveModel m =
        Hives.model(Hives.closed(parse(r.text("layers")), 0.244, 1, 0), Hives.NO_BEES, outside);
    Hives.run(m, 36_000, 3_600_000, 20, outside);
    OuterFace wall = m.layout().outer.get(0);
    double airC = m.view().nodeC(m.view().broodAirNode(), 1);
    // everything is linear here: scaled to the row's 44.5 K
    double scale = (34.5 - outC) / (airC - outC);
    double wallM2 = wallM2(m.spec());
    double lostW = wall.lostW(m.view().nodeC(wall.layerNode, 1));
    if (kind.startsWith("U-")) {
      return lostW / wallM2 / (airC - outC);
    }
    if (kind.startsWith("Q-")) {
      return lostW / wallM2 * scale;
    }
    InnerFace inner = innerWall(m);
    double surfaceC = inner.surfaceC(airC, m.view().nodeC(inner.solidNode, 1));
    return outC + (surfaceC - outC) * scale;
  }

  private static double outerResistance() {
    OuterFace face =
        new OuterFace(0, 1, 1e9, new Skin(0.6, false), HeatFlow.SIDEWAYS, 0, new double[5]);
    face.prepare(Hives.outside(0));
    return 1 / face.conductanceWK;
  }

  private static InnerFace innerWall(HiveModel m) {
    for (InnerFace f : m.layout().inner) {
      if (m.layout().names.get(f.solidNode).startsWith("wall")) {
        return f;
      }
    }
    throw new AssertionError("no wall");
  }

  private static double wallM2(HiveSpec spec) {
    double thickM = spec.wall().get(0).thicknessM();
    return (2 * (spec.lengthM() + spec.widthM()) + 4 * thickM) * spec.boxes().get(0).heightM();
  }

  /** Such as "20 mm wood + 30 mm foam 0.035"; wood without a number has 0.13. */
  private static List<Layer> parse(String text) {
    List<Layer> layers = new ArrayList<>();
    for (String part : text.split("\\+")) {
      String[] words = part.strip().split(" ");
      double lambda = words.length > 3 ? Double.parseDouble(words[3]) : 0.13;
      layers.add(
          new Layer(
              new Material(words[2], lambda, 100, 1000), Double.parseDouble(words[0]) / 1000));
    }
    return layers;
  }

  /** Conductance of a closed box without bees, from a heater held until nothing changes, W/K. */
  private static double conductanceWK(List<Layer> layers, double heightM, int boxes) {
    Outside outside = Hives.outside(0);
    HiveModel m = Hives.model(Hives.closed(layers, heightM, boxes, 0), Hives.NO_BEES, outside);
    Hives.run(m, 36_000, 3_600_000, 10, outside);
    return 10 / m.view().nodeC(m.view().broodAirNode(), 1);
  }

  /**
   * Sums by ISO 6946 at the mid-plane: one deep box of 19 mm pine 2.57 W/K. Measured on a cedar
   * box: 2.56 to 2.59 (D. Mitchell, Int. J. Biometeorol. 60 (2016), as reported in a technical
   * note).
   */
  @Test
  void onePineBox() {
    assertEquals(2.57, conductanceWK(Hives.layers(Hives.PINE), 0.244, 1), 0.02);
  }

  /** The same sums for a medium box: 2.14 W/K. */
  @Test
  void oneMediumBox() {
    assertEquals(2.14, conductanceWK(Hives.layers(Hives.PINE), 0.168, 1), 0.02);
  }

  /** The same sums with 50 mm of expanded polystyrene around every face, without edges. */
  @Test
  void insulatedBox() {
    assertEquals(0.47, conductanceWK(Hives.layers(Hives.PINE, Hives.EPS_50), 0.244, 1), 0.02);
  }

  /** Ten watts warm the bare box by 3.9 K: 10 W over 2.57 W/K. */
  @Test
  void tenWattsWarmABareBox() {
    assertEquals(3.9, 10 / conductanceWK(Hives.layers(Hives.PINE), 0.244, 1), 0.1);
  }

  /**
   * A box heated to rest and left to itself. Networks of conductances are reciprocal, so the time
   * integral of the air's excess is the sum of C T² over the heating power: near C/UA times the
   * excess, as for one mass.
   */
  @Test
  void coolingTakesCapacityOverConductance() {
    Outside outside = Hives.outside(0);
    HiveModel m =
        Hives.model(Hives.closed(Hives.layers(Hives.PINE), 0.244, 1, 40), Hives.NO_BEES, outside);
    Hives.run(m, 36_000, 7_200_000, 10, outside);
    Network parts = m.layout().network();
    double heatJ = 0;
    double squares = 0;
    for (int i = 0; i < m.view().heatNodes(); i++) {
      double c = m.view().nodeC(i, 1);
      heatJ += parts.capacity(i) * c;
      squares += parts.capacity(i) * c * c;
    }
    double startC = m.view().nodeC(m.view().broodAirNode(), 1);
    double tauS = heatJ / 10;
    double integralKs = 0;
    for (double passedS = 0; passedS < 30 * tauS; passedS += 10) {
      m.solve(10, 0, false, 0, outside);
      integralKs += 10 * m.view().meanC(m.view().broodAirNode());
      m.accept();
    }
    assertEquals(squares / 10, integralKs, 1e-6 * squares);
    assertEquals(tauS, integralKs / startC, 0.04 * tauS);
  }

  /** Inside 467 by 375 mm, 244 and 168 mm high: 42.7 and 29.4 litres. */
  @Test
  void volumes() {
    Outside outside = Hives.outside(0);
    HiveModel deep =
        Hives.model(Hives.closed(Hives.layers(Hives.PINE), 0.244, 1, 0), Hives.NO_BEES, outside);
    HiveModel medium =
        Hives.model(Hives.closed(Hives.layers(Hives.PINE), 0.168, 1, 0), Hives.NO_BEES, outside);
    assertEquals(42.7, 1000 * deep.layout().volumeM3[0], 0.1);
    assertEquals(29.4, 1000 * medium.layout().volumeM3[0], 0.1);
  }
}
