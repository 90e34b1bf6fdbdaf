package org.broodbench.hive;

import java.util.ArrayList;
import java.util.List;
import org.broodbench.matter.MoistAir;

/** Tells of a hive by its parts: cut open at a moment, and water and heat by surface. */
final class HiveReport {
  private final HiveSpec spec;
  private final HiveLayout layout;
  private final double pressurePa;

  HiveReport(HiveSpec spec, HiveLayout layout, double pressurePa) {
    this.spec = spec;
    this.layout = layout;
    this.pressurePa = pressurePa;
  }

  /** The hive cut open at the end of the solved step. */
  HiveSection section(
      Network heat, Network vapour, HiveFlows flows, double outsideC, double mantleC) {
    List<HiveSection.Box> boxes = new ArrayList<>();
    for (int i = 0; i < layout.boxes; i++) {
      double airC = heat.end(layout.air[i]);
      double pa = MoistAir.vapourPa(vapour.end(i), pressurePa);
      boxes.add(
          new HiveSection.Box(
              spec.boxes().get(i).heightM(),
              airC,
              heat.end(layout.comb[i]),
              100 * pa / MoistAir.fastSaturationWaterPa(airC),
              face("wall " + (i + 1), heat, vapour)));
    }
    return new HiveSection(
        outsideC,
        heat.end(layout.nest),
        mantleC,
        nodeC(heat, layout.plate),
        nodeC(heat, layout.panCore),
        nodeC(heat, layout.panTop),
        boxes,
        face("lid", heat, vapour),
        face("floor", heat, vapour),
        flows.throughM3S(),
        flows.twoWayM3S());
  }

  private static double nodeC(Network heat, int node) {
    return node < 0 ? Double.NaN : heat.end(node);
  }

  private HiveSection.Face face(String part, Network heat, Network vapour) {
    double insideC = Double.NaN;
    double outsideSurfaceC = Double.NaN;
    double gramsPerHour = 0;
    for (InnerFace f : layout.inner) {
      if (part(f.solidNode).equals(part)) {
        insideC = f.surfaceC(heat.end(f.airNode), heat.end(f.solidNode));
        gramsPerHour = f.rateKgS * (vapour.end(f.zone) - f.saturated) * 3.6e6;
      }
    }
    for (OuterFace f : layout.outer) {
      if (part(f.layerNode).equals(part)) {
        outsideSurfaceC = f.surfaceC(heat.end(f.layerNode));
      }
    }
    return new HiveSection.Face(insideC, outsideSurfaceC, gramsPerHour);
  }

  /** Name of the part that a node belongs to: of "wall 1 layer 2", "wall 1". */
  private String part(int node) {
    String name = layout.names.get(node);
    int cut = name.indexOf(" layer");
    return cut < 0 ? name : name.substring(0, cut);
  }

  /** What water did on every inner surface so far. */
  List<HiveSection.Film> films() {
    List<HiveSection.Film> films = new ArrayList<>();
    for (InnerFace f : layout.inner) {
      WaterBook b = f.book;
      films.add(
          new HiveSection.Film(
              part(f.solidNode),
              b.condensedKg * 1000,
              b.evaporatedKg * 1000,
              b.drainedKg * 1000,
              f.filmKg() * 1000,
              b.condensingS / 3600,
              b.wetS / 3600,
              b.firstAtS,
              b.mostKgS * 3.6e6,
              b.mostAtS));
    }
    return films;
  }

  /** Ways of heat out of the hive so far: every face, and the air. */
  List<HiveSection.Way> ways(double lostAirJ) {
    List<HiveSection.Way> ways = new ArrayList<>();
    for (OuterFace f : layout.outer) {
      ways.add(new HiveSection.Way(part(f.layerNode), f.areaM2, f.outJ, f.sunJ));
    }
    ways.add(new HiveSection.Way("air", Double.NaN, lostAirJ, 0));
    return ways;
  }
}
