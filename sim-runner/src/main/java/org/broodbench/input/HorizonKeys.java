package org.broodbench.input;

import java.util.ArrayList;
import java.util.List;
import org.broodbench.matter.Dimension;
import org.broodbench.sky.Horizon;
import org.broodbench.sky.Transposition;

/** Keys of what stands around hive and panel, and of the sky's diffuse light. */
final class HorizonKeys {
  private HorizonKeys() {}

  static void declare(Keys.Builder keys) {
    // Hay and Davies 1980; Liu and Jordan 1963
    keys.choice("site.diffuse_sky", "hay_davies", "isotropic")
        .byDefault("hay_davies")
        .help("How diffuse light is spread: a share around the sun, or even.");
    // a hill 0 %; bare broad-leaved trees about a half, from memory
    keys.quantity("site.horizon_open", "%", Dimension.RATIO)
        .between("0 %", "100 %")
        .byDefault("0 %")
        .help(
            "Share of light that comes through what makes the horizon: hill 0 %, bare trees 50 %.");
    keys.rows(
        "site.horizon",
        0,
        72,
        "Outline of hills, trees and buildings, seen from the hive; straight between its points, by"
            + " rising azimuth. One point makes an even ring.");
    keys.quantity("site.horizon.*.azimuth", "deg", Dimension.ANGLE)
        .between("0 deg", "359.9 deg")
        .help("Direction: 90 east, 180 south, 270 west.");
    keys.quantity("site.horizon.*.elevation", "deg", Dimension.ANGLE)
        .between("0 deg", "89 deg")
        .help("Height above the level.");
  }

  static Horizon horizon(Values v) {
    List<Horizon.Point> points = new ArrayList<>();
    for (Values row : v.rows("site.horizon")) {
      points.add(new Horizon.Point(row.number("azimuth"), row.number("elevation")));
    }
    return new Horizon(points, v.number("site.horizon_open"));
  }

  static Transposition.Model diffuseSky(Values v) {
    return v.text("site.diffuse_sky").equals("isotropic")
        ? Transposition.Model.ISOTROPIC
        : Transposition.Model.HAY_DAVIES;
  }

  static void check(Values v, Checks checks) {
    for (int i = 1; i < v.rowCount("site.horizon"); i++) {
      String before = "site.horizon." + (i - 1) + ".azimuth";
      String key = "site.horizon." + i + ".azimuth";
      checks.run(
          () -> {
            if (v.number(key) <= v.number(before)) {
              checks.refuse(
                  key,
                  List.of(before),
                  "above " + before + " = " + v.shown(before) + " (" + v.whence(before) + ")",
                  "Write the points by rising azimuth.");
            }
          });
    }
  }
}
