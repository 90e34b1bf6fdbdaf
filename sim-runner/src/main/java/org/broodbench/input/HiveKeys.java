package org.broodbench.input;

import java.util.ArrayList;
import java.util.List;
import org.broodbench.hive.BoxSpec;
import org.broodbench.hive.FanSpec;
import org.broodbench.hive.HiveSpec;
import org.broodbench.hive.Layer;
import org.broodbench.matter.Dimension;
import org.broodbench.matter.Material;

/** Keys of the hive without bees: boxes, walls, openings, fan. */
final class HiveKeys {
  private static final List<String> FACES = List.of("wall", "floor", "lid");

  private HiveKeys() {}

  static void declare(Keys.Builder keys) {
    String[] materials = Material.all().stream().map(Material::key).toArray(String[]::new);
    keys.table("hive", "The hive without bees.");
    // inside of the common ten-frame box, 18 3/8 x 14 3/4 in
    keys.quantity("hive.length", "mm", Dimension.LENGTH)
        .between("200 mm", "1000 mm")
        .byDefault("467 mm")
        .help("Inside length along the frames.");
    keys.quantity("hive.width", "mm", Dimension.LENGTH)
        .between("100 mm", "1000 mm")
        .byDefault("375 mm")
        .help("Inside width across the frames.");
    keys.plain("hive.brood_box", Kind.INTEGER)
        .between("0", "4")
        .byDefault("0")
        .help("Box with the brood nest, counted from 0 at the bottom.");
    keys.quantity("hive.insulation", "mm", Dimension.LENGTH)
        .between("0 mm", "300 mm")
        .byDefault("0 mm")
        .help("Thickness of insulation all round; the three keys below change single faces.");
    for (String face : FACES) {
      keys.quantity("hive." + face + "_insulation", "mm", Dimension.LENGTH)
          .between("0 mm", "300 mm")
          .optional("as `insulation`")
          .help("Thickness of insulation outside the " + face + ".");
    }
    keys.choice("hive.insulation_material", materials)
        .byDefault("eps")
        .help("What the insulation is made of.");
    for (String face : FACES) {
      keys.choice("hive." + face + "_material", materials)
          .byDefault("softwood")
          .help("What the " + face + " is made of.");
      keys.quantity("hive." + face + "_thickness", "mm", Dimension.LENGTH)
          .between("3 mm", "150 mm")
          .byDefault("19 mm")
          .help("Thickness of the " + face + ".");
    }
    // sums of edge-free insulated boxes are 1.2 to 1.5 times below what was measured on such boxes
    keys.plain("hive.edge_factor", Kind.NUMBER)
        .between("1", "3")
        .byDefault("1.3")
        .help("Factor on the heat loss of insulated faces for edges and joints.");
    // own choice: weathered light paint
    keys.quantity("hive.solar_absorptance", "", Dimension.RATIO)
        .between("0", "1")
        .byDefault("0.6")
        .help("Share of sunlight that the outside takes up: white 0.3, bare wood 0.6, dark 0.9.");
    keys.quantity("hive.entrance_width", "mm", Dimension.LENGTH)
        .between("5 mm", "1000 mm")
        .byDefault("75 mm")
        .help("Width of the entrance.");
    keys.quantity("hive.entrance_height", "mm", Dimension.LENGTH)
        .between("5 mm", "100 mm")
        .byDefault("10 mm")
        .help("Height of the entrance.");
    keys.quantity("hive.top_vent", "cm2", Dimension.AREA)
        .between("0 cm2", "400 cm2")
        .byDefault("2 cm2")
        .help("Free area of the upper vent; 0 for none.");
    // combs, mesh and bees leave 0.3 to 0.7 of an opening; low confidence
    keys.quantity("hive.open_share", "", Dimension.RATIO)
        .between("0.05", "1")
        .byDefault("0.5")
        .help("Share of the openings that combs, mesh and bees leave free.");
    // sharp orifice, any handbook of ventilation
    keys.plain("hive.discharge_coefficient", Kind.NUMBER)
        .between("0.2", "1")
        .byDefault("0.6")
        .help("Orifice coefficient of the openings.");
    // diagonal wind on an opening 0.25 to 0.35, ventilation handbooks
    keys.plain("hive.wind_effectiveness", Kind.NUMBER)
        .between("0", "1")
        .byDefault("0.3")
        .help("Flow through the entrance per area and wind speed at the hive.");

    keys.rows("hive.box", 1, 5, "Boxes from the bottom up; left out, there is one.");
    // deep body of the common ten-frame box, 9 5/8 in
    keys.quantity("hive.box.*.height", "mm", Dimension.LENGTH)
        .between("80 mm", "500 mm")
        .byDefault("244 mm")
        .help("Inside height.");
    keys.plain("hive.box.*.frames", Kind.INTEGER)
        .between("1", "20")
        .byDefault("10")
        .help("Frames it holds.");
    keys.quantity("hive.box.*.stores", "kg", Dimension.MASS)
        .between("0 kg", "60 kg")
        .byDefault("4 kg")
        .help("Honey, syrup and pollen in its combs.");

    keys.table("fan", "The exhaust fan in the upper vent.");
    // a small case fan of 60 mm; maker's sheets, own choice
    keys.quantity("fan.power", "W", Dimension.POWER)
        .between("0 W", "50 W")
        .byDefault("1.5 W")
        .help("Electrical power; 0 for no fan.");
    keys.quantity("fan.free_flow", "L/s", Dimension.FLOW)
        .between("0.01 L/s", "100 L/s")
        .byDefault("4 L/s")
        .help("Flow at no pressure.");
    keys.quantity("fan.shut_off_pressure", "Pa", Dimension.PRESSURE)
        .between("1 Pa", "500 Pa")
        .byDefault("25 Pa")
        .help("Pressure at no flow.");
  }

  static HiveSpec hive(Values v) {
    List<BoxSpec> boxes = new ArrayList<>();
    for (Values box : v.rows("hive.box")) {
      boxes.add(
          new BoxSpec(box.number("height"), (int) box.integer("frames"), box.number("stores")));
    }
    return new HiveSpec(
        v.number("hive.length"),
        v.number("hive.width"),
        boxes,
        (int) v.integer("hive.brood_box"),
        layers(v, "wall"),
        layers(v, "floor"),
        layers(v, "lid"),
        v.number("hive.edge_factor"),
        v.number("hive.solar_absorptance"),
        v.number("hive.entrance_width"),
        v.number("hive.entrance_height"),
        v.number("hive.top_vent"),
        v.number("hive.open_share"),
        v.number("hive.discharge_coefficient"),
        v.number("hive.wind_effectiveness"));
  }

  private static List<Layer> layers(Values v, String face) {
    List<Layer> layers = new ArrayList<>();
    layers.add(
        new Layer(
            material(v.text("hive." + face + "_material")),
            v.number("hive." + face + "_thickness")));
    double insulationM = insulationM(v, face);
    if (insulationM > 0) {
      layers.add(new Layer(material(v.text("hive.insulation_material")), insulationM));
    }
    return layers;
  }

  /** What the command line says of all faces goes above what the file says of one. */
  static double insulationM(Values v, String face) {
    String own = "hive." + face + "_insulation";
    boolean overruled = v.isFromOption("hive.insulation") && !v.isFromOption(own);
    return v.has(own) && !overruled ? v.number(own) : v.number("hive.insulation");
  }

  private static Material material(String key) {
    return Material.all().stream().filter(m -> m.key().equals(key)).findFirst().orElseThrow();
  }

  static FanSpec fan(Values v) {
    return new FanSpec(
        v.number("fan.power"), v.number("fan.free_flow"), v.number("fan.shut_off_pressure"));
  }

  static void check(Values v, Checks checks) {
    checks.run(
        () -> {
          int boxes = v.rowCount("hive.box");
          if (v.integer("hive.brood_box") >= boxes) {
            checks.refuse(
                "hive.brood_box",
                List.of(),
                boxes == 1 ? "0" : "0 to " + (boxes - 1),
                "There " + (boxes == 1 ? "is 1 box." : "are " + boxes + " boxes."));
          }
        });
    checks.run(
        () -> {
          if (v.number("hive.entrance_width") > v.number("hive.length")
              && v.number("hive.entrance_width") > v.number("hive.width")) {
            checks.refuse(
                "hive.entrance_width",
                List.of("hive.length", "hive.width"),
                "at most the longer side of the hive",
                "");
          }
        });
  }
}
