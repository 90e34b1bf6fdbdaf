package org.broodbench.hive;

import java.util.ArrayList;
import java.util.List;
import org.broodbench.colony.ColonySpec;
import org.broodbench.matter.Material;

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

  /** Surface of what stands in a box without combs, m²; own choice, a flat container. */
  private static final double CONTAINER_M2 = 0.1;

  private static final double BEE_SPACE_M = 0.010;

  /** A dummy board of 10 mm of softwood and the still air behind it, m²K/W. */
  private static final double DUMMY_M2KW =
      0.010 / Material.SOFTWOOD.conductivityWMK() + Iso6946.airLayerM2KW(0.030, HeatFlow.SIDEWAYS);

  private static final Skin SHADED = new Skin(0, false);

  final int boxes;
  final int[] air;
  final int[] comb;
  final int nest;
  final int plate;
  final int panCore;
  final int panTop;
  final InnerFace lidFace;
  final InnerFace broodWallFace;
  final List<InnerFace> inner = new ArrayList<>();
  final List<OuterFace> outer = new ArrayList<>();
  final List<String> names = new ArrayList<>();
  final double[] volumeM3;
  final double nestVolumeM3;
  final double planM2;

  private final double runOffM;
  private final List<Double> capacity = new ArrayList<>();
  private final List<int[]> pairs = new ArrayList<>();
  private final List<double[]> fixedLinks = new ArrayList<>();

  HiveLayout(HiveSpec hive, ColonySpec colony, HeaterSpec heater, double airHeatJM3K) {
    boxes = hive.boxes().size();
    runOffM = hive.guesses().runOffM();
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
      double combM2 = Math.max(CONTAINER_M2, otherFrames * 2 * sideM2);
      link(air[i], comb[i], combM2 / hive.guesses().combFilmM2KW());
      wettable(i, air[i], comb[i], combM2);
      if (i > 0) {
        pairs.add(new int[] {air[i - 1], air[i]});
      }
      if (i > 0 && box.below().kind() == Separator.Kind.BOARD) {
        board(i, box.below());
      }
      walls(hive, box, i);
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
    double floorM2 = hive.planM2(hive.floor());
    int floorNode =
        stack("floor", hive, hive.floor(), 0, floorM2, HeatFlow.DOWN, 0, SHADED, 0, new double[5]);
    double[] roofSun = {1, 0, 0, 0, 0};
    double lidM2 = hive.planM2(hive.lid());
    stack("lid", hive, hive.lid(), boxes - 1, lidM2, HeatFlow.UP, 0, hive.lidSkin(), 1, roofSun);
    lidFace = face("lid layer 1");
    broodWallFace = face("wall " + (hive.broodBox() + 1) + " layer 1");
    Pan mass = heater.pan();
    if (mass.heatJK() > 0) {
      plate = node("plate", heater.plateJK());
      link(plate, floorNode, heater.plateFloorWK());
      if (mass.isMixed()) {
        panCore = node("pan", mass.heatJK());
        link(plate, panCore, mass.fromPlateWK());
        panTop = panCore;
      } else {
        int below = node("pan below", mass.heatJK() / 2);
        panCore = node("pan", mass.heatJK() / 2);
        panTop = node("pan cover", mass.coverJK());
        link(plate, below, mass.fromPlateWK());
        link(below, panCore, mass.throughWK());
        link(panCore, panTop, mass.toCoverWK());
      }
      link(panTop, air[0], mass.airWK());
      link(panTop, nest, mass.nestWK());
    } else {
      plate = -1;
      panCore = -1;
      panTop = -1;
    }
  }

  /** The walls of a box; what stands behind dummy boards is a part of its own. */
  private void walls(HiveSpec hive, BoxSpec box, int i) {
    double areaM2 = hive.wallPerimeterM() * box.heightM();
    double perimeterM = 2 * (hive.lengthM() + hive.widthM());
    double shortShare = hive.widthM() / perimeterM;
    double longShare = hive.lengthM() / perimeterM;
    double[] sun = {0, shortShare, longShare, shortShare, longShare};
    double shut = box.dummyBoards() * longShare;
    String name = "wall " + (i + 1);
    HeatFlow flow = HeatFlow.SIDEWAYS;
    stack(name, hive, hive.wall(), i, (1 - shut) * areaM2, flow, 0, hive.wallSkin(), 0.5, sun);
    if (shut > 0) {
      stack(
          "side " + (i + 1),
          hive,
          hive.wall(),
          i,
          shut * areaM2,
          flow,
          DUMMY_M2KW,
          hive.wallSkin(),
          0.5,
          sun);
    }
  }

  /** A board between a box and the one below it, wettable on both sides. */
  private void board(int box, Separator board) {
    Layer layer = new Layer(board.material(), board.thicknessM());
    int node = node("board " + (box + 1), layer.capacityJM2K() * planM2);
    double half = layer.resistanceM2KW() / 2;
    for (int side = box - 1; side <= box; side++) {
      face(new InnerFace(side, air[side], node, planM2, half, HeatFlow.UP, runOffM));
    }
  }

  /**
   * Adds the layers of one wall, floor or lid; returns its innermost node.
   *
   * @param beforeM2KW resistance of what stands before it inside
   */
  private int stack(
      String name,
      HiveSpec hive,
      List<Layer> parts,
      int box,
      double areaM2,
      HeatFlow direction,
      double beforeM2KW,
      Skin skin,
      double skyShare,
      double[] sunShare) {
    double edge = hive.edgeFactor(parts);
    List<Layer> layers = Iso6946.withoutBridges(parts, direction);
    int first = -1;
    int before = -1;
    double halfBefore = beforeM2KW;
    for (int l = 0; l < layers.size(); l++) {
      Layer layer = layers.get(l);
      double half = layer.resistanceM2KW() / 2 / edge;
      if (layer.isAir()) {
        halfBefore += 2 * half;
        continue;
      }
      int node = node(name + " layer " + (l + 1), layer.capacityJM2K() * areaM2);
      if (first < 0) {
        first = node;
        face(new InnerFace(box, air[box], node, areaM2, halfBefore + half, direction, runOffM));
      } else {
        link(before, node, areaM2 / (halfBefore + half));
      }
      before = node;
      halfBefore = half;
    }
    outer.add(
        new OuterFace(before, areaM2, areaM2 / halfBefore, skin, direction, skyShare, sunShare));
    return first;
  }

  private InnerFace face(String solid) {
    return inner.stream()
        .filter(f -> names.get(f.solidNode).equals(solid))
        .findFirst()
        .orElseThrow();
  }

  private void face(InnerFace face) {
    inner.add(face);
    link(face.airNode, face.solidNode, face.conductanceWK);
  }

  /** Adds comb as a surface on which water can condense; its heat exchange is a link of its own. */
  private void wettable(int zone, int airNode, int combNode, double areaM2) {
    inner.add(new InnerFace(zone, airNode, combNode, areaM2, 0, HeatFlow.SIDEWAYS, runOffM));
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
    boolean[] varies = new boolean[capacity.size()];
    varies[nest] = true;
    for (int node : air) {
      varies[node] = true;
    }
    for (OuterFace face : outer) {
      varies[face.layerNode] = true;
    }
    Network net =
        new Network(capacity.stream().mapToDouble(Double::doubleValue).toArray(), pairs, varies);
    for (double[] f : fixedLinks) {
      net.fix((int) f[0], (int) f[1], f[2]);
    }
    return net;
  }
}
