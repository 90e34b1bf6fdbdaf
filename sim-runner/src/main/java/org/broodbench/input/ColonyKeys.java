package org.broodbench.input;

import java.util.List;
import org.broodbench.colony.ColonySpec;
import org.broodbench.matter.Dimension;

/** Keys of the bees. */
final class ColonyKeys {
  /** Cells of brood on one frame in patches; a frame fully covered would hold about 6,800. */
  private static final double CELLS_PER_FRAME = 2500;

  private ColonyKeys() {}

  static void declare(Keys.Builder keys) {
    keys.table("colony", "The bees at the start.");
    keys.plain("colony.bees", Kind.INTEGER)
        .between("0", "80000")
        .help("Adult bees; 0 for an empty hive. A frame covered on both sides has about 2,200.");
    keys.plain("colony.brood_cells", Kind.INTEGER)
        .between("0", "60000")
        .help("Cells with brood, open and sealed.");
    keys.plain("colony.brood_frames", Kind.NUMBER)
        .between("0", "20")
        .byDefault("one for each 2500 cells", ColonyKeys::frames)
        .help("Frames that the nest reaches over.");
    // 0.115 g: the figure behind most published conversions of bees and kilograms
    keys.quantity("colony.bee_mass", "mg", Dimension.MASS)
        .between("60 mg", "180 mg")
        .byDefault("115 mg")
        .help("Mass of one bee.");
    // 1 laboratory cluster (Southwick 1985), 2.85 intact colony in a hive (Southwick 1982)
    keys.plain("colony.heat_loss_factor", Kind.NUMBER)
        .between("0.5", "4")
        .byDefault("2")
        .help(
            "Heat loss of the cluster against laboratory clusters: 1 those, 2.85 whole colonies.");
    keys.quantity("colony.highest_heat", "W/kg", Dimension.SPECIFIC_POWER)
        .between("5 W/kg", "80 W/kg")
        .byDefault("40 W/kg")
        .help("Heat that the whole colony can keep up, for each kg of bees.");
    // sealed brood 3 to 5 W/kg; open larvae 5 to 17 W/kg (Petz et al. 2004) but most are small
    keys.quantity("colony.brood_heat", "mW", Dimension.POWER)
        .between("0 mW", "5 mW")
        .byDefault("0.5 mW")
        .help("Heat of one brood cell at 34.5 degC.");
    keys.plain("colony.water_near", Kind.BOOLEAN)
        .byDefault("true")
        .help("Whether bees find water for cooling near the hive.");
  }

  private static String frames(Values v) {
    double frames = Math.ceil(v.integer("colony.brood_cells") / CELLS_PER_FRAME);
    return String.valueOf(Math.min(20, frames));
  }

  static ColonySpec colony(Values v) {
    return new ColonySpec(
        v.integer("colony.bees"),
        v.number("colony.bee_mass") * 1000,
        v.integer("colony.brood_cells"),
        v.number("colony.brood_frames"),
        v.number("colony.heat_loss_factor"),
        v.number("colony.highest_heat"),
        v.number("colony.brood_heat") * 1000,
        v.flag("colony.water_near"));
  }

  static void check(Values v, Checks checks) {
    checks.run(
        () -> {
          if (v.integer("colony.brood_cells") > 0 && v.number("colony.brood_frames") <= 0) {
            checks.refuse(
                "colony.brood_frames",
                List.of("colony.brood_cells"),
                "above 0 where there is brood",
                "");
          }
        });
  }
}
