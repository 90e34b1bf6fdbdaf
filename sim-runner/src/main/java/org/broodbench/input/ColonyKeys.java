package org.broodbench.input;

import java.util.List;
import org.broodbench.colony.ColonySpec;
import org.broodbench.colony.LifeSpec;
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
    declareLife(keys);
  }

  /** What the numbers of bees and brood hang on. */
  private static void declareLife(Keys.Builder keys) {
    keys.plain("colony.numbers_move", Kind.BOOLEAN)
        .byDefault("false")
        .help(
            "Whether bees age and brood grows during a run; an outlook always lets them."
                + " Otherwise numbers change by events only.");
    keys.plain("colony.queen", Kind.BOOLEAN)
        .byDefault("true")
        .help("Whether a laying queen is there.");
    // up to 1,500 to 2,000 in best conditions (public source list quoting FAO); lower for weak ones
    keys.plain("colony.highest_laying", Kind.NUMBER)
        .between("0", "3000")
        .byDefault("1500")
        .help("Eggs a day the queen lays when nothing holds her back; 500 to 2,000.");
    // 0.154 and a collapse above 0.355: Khoury, Myerscough and Barron 2011
    keys.plain("colony.forager_loss", Kind.NUMBER)
        .between("0.02", "0.6")
        .byDefault("0.154")
        .help("Share of the foragers that a whole day of flight costs; 0.1 to 0.35 published.");
    // own choice: overwintered bees live weeks once they rear brood
    keys.plain("colony.old_bee_loss", Kind.NUMBER)
        .between("0", "0.2")
        .byDefault("0.02")
        .help(
            "Share of the bees there at the start that dies each day, flight apart; 0.005 to 0.05,"
                + " own choice.");
    keys.plain("colony.forage", Kind.NUMBER)
        .between("0", "1")
        .byDefault("0.8")
        .help("Nectar and pollen that the land gives: 0 nothing, 1 plenty; own choice.");
    keys.quantity("colony.pollen_stores", "g", Dimension.MASS)
        .between("0 g", "5 kg")
        .byDefault("300 g")
        .help("Pollen in the combs when the colony comes; own choice.");
    keys.quantity("colony.flight_from", "degC", Dimension.TEMPERATURE)
        .between("4 degC", "20 degC")
        .byDefault("12 degC")
        .help("Air from which bees forage, 10 to 13 degC; full work 4 K above.");
    // 400 cells a dm2 of one face over 125 bees a dm2
    keys.plain("colony.cells_per_bee", Kind.NUMBER)
        .between("0.5", "6")
        .byDefault("3.2")
        .help("Brood cells that one bee sitting on the brood covers.");
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
        v.flag("colony.water_near"),
        new LifeSpec(
            v.flag("colony.numbers_move"),
            v.flag("colony.queen"),
            v.number("colony.highest_laying"),
            v.number("colony.forager_loss"),
            v.number("colony.old_bee_loss"),
            v.number("colony.forage"),
            v.number("colony.pollen_stores"),
            v.number("colony.flight_from"),
            v.number("colony.cells_per_bee")));
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
