package org.broodbench.hive;

import java.util.ArrayList;
import java.util.List;
import org.broodbench.matter.Material;

/**
 * Resistance and transmittance of building parts by ISO 6946:2017: layers in series between the
 * surface resistances of table 7, still air layers by table 8, layers with bridges by the combined
 * method (mean of an upper limit, parallel paths, and a lower limit, parallel within the layer).
 *
 * <p>Resistances in m²K/W. Leaves out: corrections for fixings and air gaps of annex F.
 */
public final class Iso6946 {
  /** Outside surface resistance, m²K/W (table 7). */
  public static final double OUTSIDE_M2KW = 0.04;

  /** Thickness of still air, m, and its resistance by direction, m²K/W (table 8). */
  private static final double[] AIR_M = {0, 0.005, 0.007, 0.010, 0.015, 0.025, 0.050, 0.100, 0.300};

  private static final double[][] AIR_M2KW = {
    {0, 0.11, 0.13, 0.15, 0.16, 0.16, 0.16, 0.16, 0.16},
    {0, 0.11, 0.13, 0.15, 0.17, 0.18, 0.18, 0.18, 0.18},
    {0, 0.11, 0.13, 0.15, 0.17, 0.19, 0.21, 0.22, 0.23}
  };

  private Iso6946() {}

  /** Resistance of a closed air layer with ordinary surfaces, m²K/W; interpolated as stated. */
  public static double airLayerM2KW(double thicknessM, HeatFlow flow) {
    double[] r = AIR_M2KW[flow.ordinal()];
    for (int i = 1; i < AIR_M.length; i++) {
      if (thicknessM <= AIR_M[i]) {
        double share = (thicknessM - AIR_M[i - 1]) / (AIR_M[i] - AIR_M[i - 1]);
        return r[i - 1] + share * (r[i] - r[i - 1]);
      }
    }
    return r[r.length - 1];
  }

  /** A closed air layer as a layer of a wall, floor or lid. */
  public static Layer airLayer(double thicknessM, HeatFlow flow) {
    double conductivityWMK = thicknessM / airLayerM2KW(thicknessM, flow);
    // dry air at 20 °C
    return new Layer(new Material("air", conductivityWMK, 1.2, 1006), thicknessM);
  }

  /** Resistance of layers in series with both surfaces, m²K/W; bridges by the combined method. */
  public static double totalM2KW(List<Layer> layers, HeatFlow flow) {
    double surfaces = flow.surfaceM2KW() + OUTSIDE_M2KW;
    return 0.5 * (upperM2KW(layers, surfaces) + lowerM2KW(layers, surfaces));
  }

  /** Thermal transmittance before corrections, W/(m²K). */
  public static double transmittanceWM2K(List<Layer> layers, HeatFlow flow) {
    return 1 / totalM2KW(layers, flow);
  }

  /**
   * Upper limit: 1/R = Σ F/R over whole paths. Bridges of different layers are taken to lie behind
   * each other as far as they reach.
   *
   * @param surfacesM2KW both surface resistances together
   */
  public static double upperM2KW(List<Layer> layers, double surfacesM2KW) {
    List<Double> edges = new ArrayList<>(List.of(0.0, 1.0));
    for (Layer l : layers) {
      edges.add(l.bridgeShare());
    }
    edges.sort(null);
    double sumWM2K = 0;
    for (int i = 1; i < edges.size(); i++) {
      double share = edges.get(i) - edges.get(i - 1);
      double middle = 0.5 * (edges.get(i) + edges.get(i - 1));
      double path = surfacesM2KW;
      for (Layer l : layers) {
        path += middle < l.bridgeShare() ? l.bridgeM2KW() : l.plainM2KW();
      }
      sumWM2K += share / path;
    }
    return 1 / sumWM2K;
  }

  /** Lower limit: each layer by its own paths in parallel, then in series. */
  public static double lowerM2KW(List<Layer> layers, double surfacesM2KW) {
    double sum = surfacesM2KW;
    for (Layer l : layers) {
      sum += l.resistanceM2KW();
    }
    return sum;
  }

  /**
   * The same layers without bridges: the bridged ones get the conductivity with which the whole
   * keeps the resistance of the combined method, and the heat capacity of both parts.
   */
  public static List<Layer> withoutBridges(List<Layer> layers, HeatFlow flow) {
    double bridgedM2KW = 0;
    for (Layer l : layers) {
      bridgedM2KW += l.bridgeShare() > 0 ? l.resistanceM2KW() : 0;
    }
    if (bridgedM2KW == 0) {
      return layers;
    }
    double surfaces = flow.surfaceM2KW() + OUTSIDE_M2KW;
    double excess = totalM2KW(layers, flow) - lowerM2KW(layers, surfaces);
    double factor = 1 + excess / bridgedM2KW;
    List<Layer> even = new ArrayList<>();
    for (Layer l : layers) {
      if (l.bridgeShare() == 0) {
        even.add(l);
        continue;
      }
      Material m = l.material();
      even.add(
          new Layer(
              new Material(
                  m.key() + " with bridges",
                  l.thicknessM() / (l.resistanceM2KW() * factor),
                  m.densityKgM3(),
                  l.capacityJM2K() / (l.thicknessM() * m.densityKgM3())),
              l.thicknessM()));
    }
    return even;
  }

  /**
   * Heat loss of a closed hive by the standard's sums, W/K: mid-plane areas of the innermost
   * layers, edges of insulated faces by the hive's own factor.
   */
  public static double hiveWK(HiveSpec hive) {
    double heightM = 0;
    for (BoxSpec b : hive.boxes()) {
      heightM += b.heightM();
    }
    return faceWK(hive, hive.wall(), hive.wallPerimeterM() * heightM, HeatFlow.SIDEWAYS)
        + faceWK(hive, hive.lid(), hive.planM2(hive.lid()), HeatFlow.UP)
        + faceWK(hive, hive.floor(), hive.planM2(hive.floor()), HeatFlow.DOWN);
  }

  private static double faceWK(HiveSpec hive, List<Layer> layers, double areaM2, HeatFlow flow) {
    double surfaces = flow.surfaceM2KW() + OUTSIDE_M2KW;
    double solid = totalM2KW(layers, flow) - surfaces;
    return areaM2 / (surfaces + solid / hive.edgeFactor(layers));
  }
}
