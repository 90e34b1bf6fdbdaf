package org.broodbench.hive;

import java.util.ArrayList;
import java.util.List;

/** Turns the description of a hive into nodes, links and faces. */
final class HiveLayout {
  /**
   * Heat capacity of drawn comb with its frame, J/K per m² of one side: 0.9 kJ/K for a deep frame
   * of 0.088 m².
   */
  private static final double FRAME_JK_PER_M2 = 0.9e3 / 0.088;

  /** Heat capacity of a brood frame, J/K per m² of one side: 4.0 kJ/K for a deep frame. */
  private static final double BROOD_FRAME_JK_PER_M2 = 4.0e3 / 0.088;

  /** Honey, J/(kg K), 17 % water. */
  private static final double HONEY_J_KG_K = 2300;

  /** Bees, J/(kg K); tissue, from memory. */
  static final double BEES_J_KG_K = 3500;

  /** Natural convection at combs, W/(m²K), both sides wetted; own choice within 2 to 4. */
  private static final double COMB_FILM_WM2K = 3;

  private static final double BEE_SPACE_M = 0.010;

  final int boxes;
  final int[] air;
  final int[] comb;
  final int nest;
  final int plate;
  final int pan;
  final List<InnerFace> inner = new ArrayList<>();
  final List<OuterFace> outer = new ArrayList<>();
  final List<String> names = new ArrayList<>();
  final double[] volumeM3;
  final double nestVolumeM3;
  final double planM2;

  private final List<Double> capacity = new ArrayList<>();
  private final List<int[]> pairs = new ArrayList<>();
  private final List<double[]> fixedLinks = new ArrayList<>();

  HiveLayout(HiveSpec hive, ColonySpec colony, HeaterSpec heater, double airHeatJM3K) {
    boxes = hive.boxes().size();
    air = new int[boxes];
    comb = new int[boxes];
    volumeM3 = new double[boxes];
    planM2 = hive.lengthM() * hive.widthM();
    double broodSideM2 = 0;
    for (int i = 0; i < boxes; i++) {
      BoxSpec box = hive.boxes().get(i);
      double sideM2 = (hive.lengthM() - 0.03) * (box.heightM() - 0.03);
      volumeM3[i] = planM2 * box.heightM();
      air[i] = node("air " + (i + 1), volumeM3[i] * airHeatJM3K);
      double otherFrames = box.frames();
      if (i == hive.broodBox()) {
        broodSideM2 = sideM2;
        otherFrames = Math.max(0.5, otherFrames - colony.broodFrames());
      }
      comb[i] =
          node(
              "combs " + (i + 1),
              otherFrames * sideM2 * FRAME_JK_PER_M2 + box.storesKg() * HONEY_J_KG_K + 50);
      link(air[i], comb[i], otherFrames * 2 * sideM2 * COMB_FILM_WM2K + 0.1);
      wettable(i, air[i], comb[i], otherFrames * 2 * sideM2);
      if (i > 0) {
        pairs.add(new int[] {air[i - 1], air[i]});
      }
      double perimeterM = 2 * (hive.lengthM() + hive.widthM());
      double meanM2 = (perimeterM + 4 * innerThicknessM(hive.wall())) * box.heightM();
      double lengthShare = hive.lengthM() / (hive.lengthM() + hive.widthM()) / 2;
      double widthShare = hive.widthM() / (hive.lengthM() + hive.widthM()) / 2;
      stack(
          "wall " + (i + 1),
          hive,
          hive.wall(),
          i,
          meanM2,
          InnerFace.Direction.SIDEWAYS,
          0.5,
          new double[] {0, widthShare, lengthShare, widthShare, lengthShare});
    }
    nest =
        node(
            "nest",
            colony.massKg() * BEES_J_KG_K
                + colony.broodFrames() * broodSideM2 * BROOD_FRAME_JK_PER_M2
                + 200);
    pairs.add(new int[] {nest, air[hive.broodBox()]});
    wettable(boxes, nest, nest, Math.max(0.05, colony.broodFrames() * 2 * broodSideM2));
    nestVolumeM3 = Math.max(5e-4, colony.broodFrames() * broodSideM2 * 2 * BEE_SPACE_M);
    double lidM = innerThicknessM(hive.lid());
    double faceM2 = (hive.lengthM() + lidM) * (hive.widthM() + lidM);
    int floorNode =
        stack("floor", hive, hive.floor(), 0, faceM2, InnerFace.Direction.DOWN, 0, new double[5]);
    stack(
        "lid",
        hive,
        hive.lid(),
        boxes - 1,
        faceM2,
        InnerFace.Direction.UP,
        1,
        new double[] {1, 0, 0, 0, 0});
    if (heater.panJK() > 0) {
      plate = node("plate", heater.plateJK());
      pan = node("pan", heater.panJK());
      link(plate, pan, heater.platePanWK());
      link(plate, floorNode, heater.plateFloorWK());
      link(pan, air[0], heater.panAirWK());
      link(pan, nest, heater.panNestWK());
    } else {
      plate = -1;
      pan = -1;
    }
  }

  /**
   * Areas are those of the mid-plane of the innermost layer, the box proper; what edges and corners
   * of insulation around it add is the edge factor's part, so that a factor of 1 is edge-free.
   */
  private static double innerThicknessM(List<Layer> layers) {
    return layers.get(0).thicknessM();
  }

  /** Adds the layers of one wall, floor or lid; returns its innermost node. */
  private int stack(
      String name,
      HiveSpec hive,
      List<Layer> layers,
      int box,
      double areaM2,
      InnerFace.Direction direction,
      double skyShare,
      double[] sunShare) {
    double edge = layers.size() > 1 ? hive.edgeFactor() : 1;
    int first = -1;
    int before = -1;
    double halfBefore = 0;
    for (int l = 0; l < layers.size(); l++) {
      Layer layer = layers.get(l);
      int node = node(name + " layer " + (l + 1), layer.capacityJM2K() * areaM2);
      double half = layer.resistanceM2KW() / 2 / edge;
      if (l == 0) {
        first = node;
        inner.add(new InnerFace(box, air[box], node, areaM2, half, direction));
        pairs.add(new int[] {air[box], node});
        fixedLinks.add(new double[] {air[box], node, inner.get(inner.size() - 1).conductanceWK});
      } else {
        link(before, node, areaM2 / (halfBefore + half));
      }
      before = node;
      halfBefore = half;
    }
    outer.add(
        new OuterFace(
            before, areaM2, areaM2 / halfBefore, hive.solarAbsorptance(), skyShare, sunShare));
    return first;
  }

  /** Adds comb as a surface on which water can condense; its heat exchange is a link of its own. */
  private void wettable(int zone, int airNode, int combNode, double areaM2) {
    inner.add(new InnerFace(zone, airNode, combNode, areaM2, 0, InnerFace.Direction.SIDEWAYS));
  }

  private int node(String name, double capacityJK) {
    names.add(name);
    capacity.add(capacityJK);
    return capacity.size() - 1;
  }

  private void link(int i, int j, double conductanceWK) {
    pairs.add(new int[] {i, j});
    fixedLinks.add(new double[] {i, j, conductanceWK});
  }

  /** The network with all constant links in place. */
  Network network() {
    Network net = new Network(capacity.stream().mapToDouble(Double::doubleValue).toArray(), pairs);
    for (double[] f : fixedLinks) {
      net.fix((int) f[0], (int) f[1], f[2]);
    }
    return net;
  }
}
