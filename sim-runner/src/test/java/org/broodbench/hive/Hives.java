package org.broodbench.hive;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.broodbench.colony.ColonySpec;
import org.broodbench.matter.Material;

/** Hives for the tests of this package. */
final class Hives {
  static final ColonySpec NO_BEES = new ColonySpec(0, 0.115, 0, 0, 1, 40, 0.5, false);
  static final HeaterSpec NO_PAN = new HeaterSpec(0, 12, false, true, 0, 0, 0, 0, 0, 0);
  static final FanSpec NO_FAN = new FanSpec(0, 0, 0);
  static final Layer PINE = new Layer(Material.SOFTWOOD, 0.019);
  static final Layer EPS_50 = new Layer(Material.EPS, 0.05);

  private Hives() {}

  /** Boxes of 467 by 375 mm without openings, dull walls, no sun. */
  static HiveSpec closed(List<Layer> layers, double heightM, int boxes, double storesKg) {
    return new HiveSpec(
        0.467,
        0.375,
        Collections.nCopies(boxes, new BoxSpec(heightM, 10, storesKg)),
        0,
        layers,
        layers,
        layers,
        1,
        0.6,
        0,
        0,
        0,
        0.5,
        0.6,
        0.3);
  }

  static List<Layer> layers(Layer... layers) {
    return new ArrayList<>(List.of(layers));
  }

  /** Dry air at a temperature, the wind of the standard's outer resistance, sky as warm as air. */
  static Outside outside(double airC) {
    Outside out = new Outside();
    out.airC = airC;
    out.skyC = airC;
    out.windMS = 4;
    return out;
  }

  static HiveModel model(HiveSpec spec, ColonySpec colony, Outside outside) {
    return new HiveModel(spec, colony, NO_PAN, NO_FAN, 101_325, outside);
  }

  static void run(HiveModel m, double stepS, double seconds, double heaterW, Outside outside) {
    for (double t = 0; t < seconds; t += stepS) {
      m.solve(stepS, heaterW, false, 0, outside);
      m.accept();
    }
  }
}
