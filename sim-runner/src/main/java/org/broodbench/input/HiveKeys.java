package org.broodbench.input;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.broodbench.hive.BoxSpec;
import org.broodbench.hive.CommonBody;
import org.broodbench.hive.FanSpec;
import org.broodbench.hive.Guesses;
import org.broodbench.hive.HeatFlow;
import org.broodbench.hive.HiveSpec;
import org.broodbench.hive.Iso6946;
import org.broodbench.hive.Layer;
import org.broodbench.hive.Separator;
import org.broodbench.hive.Skin;
import org.broodbench.matter.Dimension;
import org.broodbench.matter.Material;

/** Keys of the hive without bees: boxes, walls, openings, fan. */
final class HiveKeys {
  private static final List<String> FACES = List.of("wall", "floor", "lid");

  private HiveKeys() {}

  static void declare(Keys.Builder keys) {
    String[] materials = Material.all().stream().map(Material::key).toArray(String[]::new);
    keys.table("hive", "The hive without bees.");
    keys.choice("hive.body", words(CommonBody.values()))
        .byDefault("ten_frame")
        .help("Common body whose inside size holds; the two keys below go above it.");
    keys.quantity("hive.length", "mm", Dimension.LENGTH)
        .between("200 mm", "1000 mm")
        .byDefault("by `body`: 467 mm", v -> millimetres(body(v).lengthM()))
        .help("Inside length along the frames.");
    keys.quantity("hive.width", "mm", Dimension.LENGTH)
        .between("100 mm", "1000 mm")
        .byDefault("by `body`: 375, 311 or 197 mm", v -> millimetres(body(v).widthM()))
        .help("Inside width across the frames.");
    keys.quantity("hive.front", "deg", Dimension.ANGLE)
        .between("0 deg", "360 deg")
        .byDefault("180 deg")
        .help("Where the front looks, a short side: 0 north, 90 east, 180 south.");
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
    // ISO 10456 carries conductivity on to wet insulation; how wet it gets is own choice
    keys.quantity("hive.insulation_wetness", "%", Dimension.RATIO)
        .between("0 %", "10 %")
        .byDefault("0 %")
        .help("Water in the insulation by volume; dry 0, a soaked wool batt several percent.");
    // none on a bare box; battens of a framed wall take 5 to 15 percent
    keys.quantity("hive.insulation_battens", "%", Dimension.RATIO)
        .between("0 %", "50 %")
        .byDefault("0 %")
        .help("Share of the insulated area that softwood battens take.");
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
    keys.plain("hive.loss_factor", Kind.NUMBER)
        .between("0.2", "5")
        .byDefault("1")
        .help(
            "Factor on the conductance of walls, floor and lid against the sum of their layers, as"
                + " a field log shows it.");
    // own choice: weathered light paint
    keys.quantity("hive.solar_absorptance", "", Dimension.RATIO)
        .between("0", "1")
        .byDefault("0.6")
        .help("Share of sunlight that the outside takes up: white 0.3, bare wood 0.6, dark 0.9.");
    keys.quantity("hive.lid_absorptance", "", Dimension.RATIO)
        .between("0", "1")
        .byDefault("as `solar_absorptance`", v -> v.shown("hive.solar_absorptance"))
        .help("The same for the lid alone.");
    for (String face : List.of("wall", "lid")) {
      keys.choice("hive." + face + "_cover", "none", "wrap", "screen")
          .byDefault("none")
          .help(
              "Outside the "
                  + face
                  + ": a wrap of felt over a closed air gap, or a screen with outdoor air behind.");
    }
    keys.quantity("hive.wrap_gap", "mm", Dimension.LENGTH)
        .between("0 mm", "100 mm")
        .byDefault("5 mm")
        .help("Air gap under a wrap.");
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
    // the four below: numbers that nobody has measured well, see hive.Guesses
    keys.quantity("hive.comb_film", "m2K/W", Dimension.INSULANCE)
        .between("0.1 m2K/W", "1 m2K/W")
        .byDefault("0.33 m2K/W")
        .help("Resistance between the air and the combs beside the nest; 0.25 to 0.5 is likely.");
    keys.quantity("hive.box_mixing", "L/s", Dimension.FLOW)
        .between("0 L/s", "2 L/s")
        .byDefault("0.05 L/s")
        .help("Air that movement of bees exchanges between neighbouring boxes.");
    keys.quantity("hive.cluster_exchange", "L/s", Dimension.FLOW)
        .between("0.001 L/s", "1 L/s")
        .byDefault("0.03 L/s")
        .help("Air that a tight cluster of 1 kg exchanges with its box; 0.01 to 0.1 is likely.");
    keys.quantity("hive.film_runs_off", "mm", Dimension.LENGTH)
        .between("0.01 mm", "2 mm")
        .byDefault("0.1 mm")
        .help("Film of water that runs off walls and drips from the lid.");

    keys.rows("hive.box", 1, 5, "Boxes from the bottom up; left out, there is one.");
    keys.choice("hive.box.*.use", "combs", "feeder", "empty")
        .byDefault("combs")
        .help("With combs, with a container of feed, or with nothing in it.");
    keys.choice("hive.box.*.size", words(CommonBody.Depth.values()))
        .byDefault("deep")
        .help("Common depth; the key below goes above it.");
    keys.quantity("hive.box.*.height", "mm", Dimension.LENGTH)
        .between("50 mm", "500 mm")
        .byDefault("by `size`: 244, 168 or 144 mm", HiveKeys::boxHeight)
        .help("Inside height.");
    keys.plain("hive.box.*.frames", Kind.INTEGER)
        .between("0", "20")
        .byDefault("by `hive.body`: 10, 8 or 5; 0 without combs", HiveKeys::boxFrames)
        .help("Frames it holds.");
    keys.quantity("hive.box.*.stores", "kg", Dimension.MASS)
        .between("0 kg", "60 kg")
        .byDefault("4 kg, 0 kg if empty", v -> v.text("use").equals("empty") ? "0 kg" : "4 kg")
        .help("Honey, syrup and pollen in its combs, or feed in its container.");
    keys.plain("hive.box.*.dummy_boards", Kind.INTEGER)
        .between("0", "2")
        .byDefault("0")
        .help("Boards that close off the room beside the combs, one for each long side.");
    // own choices: a punched sheet with holes of about 4 mm; a crown board with no hole
    keys.choice("hive.box.*.below", "open", "sheet", "board")
        .byDefault("open")
        .help("What lies under this box: frames alone, a perforated sheet or grid, or a board.");
    keys.quantity("hive.box.*.sheet_open_share", "%", Dimension.RATIO)
        .between("5 %", "95 %")
        .byDefault("50 %")
        .onlyWhen("below", "sheet")
        .help("Share of the sheet that its holes take.");
    keys.quantity("hive.box.*.sheet_hole", "mm", Dimension.LENGTH)
        .between("0.5 mm", "50 mm")
        .byDefault("4 mm")
        .onlyWhen("below", "sheet")
        .help("Width of its holes.");
    keys.quantity("hive.box.*.board_opening", "cm2", Dimension.AREA)
        .between("0 cm2", "1000 cm2")
        .byDefault("0 cm2")
        .onlyWhen("below", "board")
        .help("Free area of the hole in the board; the vent holes of a feeder.");
    keys.choice("hive.box.*.board_material", materials)
        .byDefault("plywood")
        .onlyWhen("below", "board")
        .help("What the board is made of.");
    keys.quantity("hive.box.*.separator_thickness", "mm", Dimension.LENGTH)
        .between("0.3 mm", "100 mm")
        .byDefault("1 mm, of a board 10 mm", HiveKeys::separatorThickness)
        .onlyWhen("below", "sheet", "board")
        .help("Thickness of sheet or board.");

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
        .help("Pressure at no flow, at sea level.");
    keys.choice("fan.curve", "parabola", "line")
        .byDefault("parabola")
        .help("Shape of its curve between the two: small axial fans lie near a parabola.");
  }

  static HiveSpec hive(Values v) {
    List<BoxSpec> boxes = new ArrayList<>();
    for (Values box : v.rows("hive.box")) {
      boxes.add(
          new BoxSpec(
              box.number("height"),
              (int) box.integer("frames"),
              box.number("stores"),
              (int) box.integer("dummy_boards"),
              boxes.isEmpty() ? Separator.NONE : separator(box)));
    }
    return new HiveSpec(
        v.number("hive.length"),
        v.number("hive.width"),
        v.number("hive.front"),
        boxes,
        (int) v.integer("hive.brood_box"),
        layers(v, "wall"),
        layers(v, "floor"),
        layers(v, "lid"),
        v.number("hive.edge_factor"),
        skin(v, "wall", "hive.solar_absorptance"),
        skin(v, "lid", "hive.lid_absorptance"),
        v.number("hive.entrance_width"),
        v.number("hive.entrance_height"),
        v.number("hive.top_vent"),
        v.number("hive.open_share"),
        v.number("hive.discharge_coefficient"),
        v.number("hive.wind_effectiveness"),
        new Guesses(
            v.number("hive.comb_film"),
            v.number("hive.box_mixing"),
            v.number("hive.cluster_exchange"),
            v.number("hive.film_runs_off"),
            v.number("hive.loss_factor")));
  }

  private static Separator separator(Values box) {
    return switch (box.text("below")) {
      case "sheet" ->
          new Separator(
              Separator.Kind.SHEET,
              box.number("sheet_open_share"),
              box.number("sheet_hole"),
              0,
              box.number("separator_thickness"),
              Material.STEEL);
      case "board" ->
          new Separator(
              Separator.Kind.BOARD,
              0,
              0,
              box.number("board_opening"),
              box.number("separator_thickness"),
              material(box.text("board_material")));
      default -> Separator.NONE;
    };
  }

  private static Skin skin(Values v, String face, String absorptanceKey) {
    return new Skin(v.number(absorptanceKey), v.text("hive." + face + "_cover").equals("screen"));
  }

  private static List<Layer> layers(Values v, String face) {
    List<Layer> layers = new ArrayList<>();
    layers.add(
        new Layer(
            material(v.text("hive." + face + "_material")),
            v.number("hive." + face + "_thickness")));
    double insulationM = insulationM(v, face);
    if (insulationM > 0) {
      layers.add(
          new Layer(
              material(v.text("hive.insulation_material"))
                  .wetted(v.number("hive.insulation_wetness")),
              insulationM,
              Material.SOFTWOOD,
              v.number("hive.insulation_battens")));
    }
    if (!face.equals("floor") && v.text("hive." + face + "_cover").equals("wrap")) {
      double gapM = v.number("hive.wrap_gap");
      if (gapM > 0) {
        layers.add(Iso6946.airLayer(gapM, face.equals("lid") ? HeatFlow.UP : HeatFlow.SIDEWAYS));
      }
      layers.add(new Layer(Material.FELT, 0.001));
    }
    return layers;
  }

  /** What the command line says of all faces goes above what the file says of one. */
  static double insulationM(Values v, String face) {
    String own = "hive." + face + "_insulation";
    boolean overruled = v.isFromOption("hive.insulation") && !v.isFromOption(own);
    return v.has(own) && !overruled ? v.number(own) : v.number("hive.insulation");
  }

  private static Values nest(Values v) {
    return v.rows("hive.box").get((int) v.integer("hive.brood_box"));
  }

  private static CommonBody body(Values v) {
    return CommonBody.valueOf(v.root().text("hive.body").toUpperCase(Locale.ROOT));
  }

  private static String boxHeight(Values box) {
    return millimetres(
        CommonBody.Depth.valueOf(box.text("size").toUpperCase(Locale.ROOT)).heightM());
  }

  private static String boxFrames(Values box) {
    return box.text("use").equals("combs") ? String.valueOf(body(box).frames()) : "0";
  }

  private static String separatorThickness(Values box) {
    return box.text("below").equals("board") ? "10 mm" : "1 mm";
  }

  private static String millimetres(double m) {
    return String.format(Locale.ROOT, "%.0f mm", m * 1000);
  }

  private static String[] words(Enum<?>[] all) {
    return Stream.of(all).map(e -> e.name().toLowerCase(Locale.ROOT)).toArray(String[]::new);
  }

  private static Material material(String key) {
    return Material.all().stream().filter(m -> m.key().equals(key)).findFirst().orElseThrow();
  }

  static FanSpec fan(Values v) {
    return new FanSpec(
        v.number("fan.power"),
        v.number("fan.free_flow"),
        v.number("fan.shut_off_pressure"),
        FanSpec.Curve.valueOf(v.text("fan.curve").toUpperCase(Locale.ROOT)));
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
          } else if (nest(v).integer("frames") - nest(v).integer("dummy_boards") < 1) {
            checks.refuse(
                "hive.brood_box",
                List.of(),
                "a box with frames",
                "The brood nest stands on combs.");
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
