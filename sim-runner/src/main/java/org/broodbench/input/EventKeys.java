package org.broodbench.input;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.broodbench.matter.Dimension;
import org.broodbench.rig.EventSpec;
import org.broodbench.rig.FaultKind;
import org.broodbench.rig.Window;

/** Keys of what happens during a run. */
final class EventKeys {
  private EventKeys() {}

  private static final List<String> DEEDS =
      List.of(
          "install_colony",
          "feed",
          "open_lid",
          "add_box",
          "change_vent",
          "shore_power",
          "set_point");

  private static FaultKind[] kinds(Predicate<FaultKind> which) {
    return Arrays.stream(FaultKind.values()).filter(which).toArray(FaultKind[]::new);
  }

  private static String[] words(List<String> before, FaultKind... faults) {
    return Stream.concat(before.stream(), Arrays.stream(faults).map(FaultKind::key))
        .toArray(String[]::new);
  }

  private static FaultKind kind(String word) {
    return FaultKind.valueOf(word.toUpperCase(Locale.ROOT));
  }

  /** 0 for a row that the size does not belong to. */
  private static double usualSize(Values row, Predicate<FaultKind> which) {
    return Arrays.stream(kinds(which))
        .filter(kind -> kind.key().equals(row.text("what")))
        .mapToDouble(FaultKind::usualSize)
        .findFirst()
        .orElse(0);
  }

  private static EventSpec.Fault fault(Values row, double atS) {
    FaultKind kind = kind(row.text("what"));
    boolean lasts = kind.canEnd() && row.has("lasts");
    return new EventSpec.Fault(
        atS,
        kind,
        lasts ? row.number("lasts") : Double.POSITIVE_INFINITY,
        kind.isOffset()
            ? row.number("offset")
            : kind.isShare() ? row.number("share_left") : Double.NaN);
  }

  static void declare(Keys.Builder keys) {
    keys.rows("event", 0, 200, "Something that happens during the run.");
    keys.plain("event.*.at", Kind.MOMENT)
        .help("When: a date and time with zone, or time since the start: \"2 d 14 h\".");
    keys.choice("event.*.what", words(DEEDS, FaultKind.values()))
        .help("What happens: a deed of the keeper, or something that breaks.");
    keys.plain("event.*.bees", Kind.INTEGER)
        .between("0", "80000")
        .onlyWhen("what", "install_colony")
        .help("Adult bees that move in.");
    keys.plain("event.*.brood_cells", Kind.INTEGER)
        .between("0", "60000")
        .byDefault("0")
        .onlyWhen("what", "install_colony")
        .help("Brood cells that come with them.");
    keys.quantity("event.*.mass", "kg", Dimension.MASS)
        .above("0 kg")
        .atMost("30 kg")
        .onlyWhen("what", "feed")
        .help("Mass of the feed.");
    keys.quantity("event.*.water_share", "%", Dimension.RATIO)
        .between("0 %", "80 %")
        .byDefault("40 %")
        .onlyWhen("what", "feed")
        .help("Water in the feed: dough 10 %, thick syrup 33 %, thin syrup 50 %.");
    keys.quantity("event.*.temperature", "degC", Dimension.TEMPERATURE)
        .between("-10 degC", "60 degC")
        .byDefault("20 degC")
        .onlyWhen("what", "feed")
        .help("Temperature of the feed.");
    keys.quantity("event.*.duration", "min", Dimension.TIME)
        .between("10 s", "4 h")
        .byDefault("10 min")
        .onlyWhen("what", "open_lid")
        .help("How long the lid is off.");
    keys.quantity("event.*.height", "mm", Dimension.LENGTH)
        .between("80 mm", "500 mm")
        .byDefault("244 mm")
        .onlyWhen("what", "add_box")
        .help("Inside height of the box.");
    keys.plain("event.*.frames", Kind.INTEGER)
        .between("1", "20")
        .byDefault("10")
        .onlyWhen("what", "add_box")
        .help("Frames in the box.");
    keys.quantity("event.*.stores", "kg", Dimension.MASS)
        .between("0 kg", "60 kg")
        .byDefault("0 kg")
        .onlyWhen("what", "add_box")
        .help("Stores in the box.");
    keys.quantity("event.*.top_vent", "cm2", Dimension.AREA)
        .between("0 cm2", "400 cm2")
        .onlyWhen("what", "change_vent")
        .help("New free area of the upper vent.");
    keys.plain("event.*.present", Kind.BOOLEAN)
        .onlyWhen("what", "shore_power")
        .help("Whether shore power is there from now on.");
    keys.quantity("event.*.set_point", "degC", Dimension.TEMPERATURE)
        .between("5 degC", "36 degC")
        .onlyWhen("what", "set_point")
        .help("The new set point.");
    keys.quantity("event.*.lasts", "h", Dimension.TIME)
        .above("0 s")
        .optional("to the end of the run")
        .onlyWhen("what", words(List.of(), kinds(FaultKind::canEnd)))
        .help("How long it stays broken.");
    keys.quantity("event.*.offset", "K", Dimension.TEMPERATURE_DIFFERENCE)
        .between("-40 K", "40 K")
        .byDefault(
            "-3 K, of a wet plug 2 K", row -> (int) usualSize(row, FaultKind::isOffset) + " K")
        .onlyWhen("what", words(List.of(), kinds(FaultKind::isOffset)))
        .help("Reading minus truth.");
    keys.quantity("event.*.share_left", "%", Dimension.RATIO)
        .between("0 %", "100 %")
        .byDefault(
            "battery 60 %, panel 5 %, else 0 %",
            row -> Math.round(100 * usualSize(row, FaultKind::isShare)) + " %")
        .onlyWhen("what", words(List.of(), kinds(FaultKind::isShare)))
        .help("What is left of the light, the capacity, the element, the opening.");
  }

  /**
   * The events inside the window in the order of time; those at one time in the order of the file.
   */
  static List<EventSpec> events(Values v, Window window) {
    List<EventSpec> events = new ArrayList<>();
    for (Values row : v.rows("event")) {
      double atS = row.secondsSince("at", window.fromEpochS());
      if (atS >= 0 && atS < window.toEpochS() - window.fromEpochS()) {
        events.add(event(row, atS));
      }
    }
    events.sort(Comparator.comparingDouble(EventSpec::atS));
    return events;
  }

  private static EventSpec event(Values row, double atS) {
    return switch (row.text("what")) {
      case "install_colony" ->
          new EventSpec.InstallColony(atS, row.integer("bees"), row.integer("brood_cells"));
      case "feed" ->
          new EventSpec.Feed(
              atS, row.number("mass"), row.number("water_share"), row.number("temperature"));
      case "open_lid" -> new EventSpec.OpenLid(atS, row.number("duration"));
      case "add_box" ->
          new EventSpec.AddBox(
              atS, row.number("height"), (int) row.integer("frames"), row.number("stores"));
      case "change_vent" -> new EventSpec.ChangeVent(atS, row.number("top_vent"));
      case "shore_power" -> new EventSpec.ShorePower(atS, row.flag("present"));
      case "set_point" -> new EventSpec.SetPoint(atS, row.number("set_point"));
      default -> fault(row, atS);
    };
  }

  static void check(Values v, Checks checks) {
    for (int i = 0; i < v.rowCount("event"); i++) {
      String row = "event." + i + ".";
      checks.run(
          () -> {
            if (v.text(row + "what").equals(FaultKind.BATTERY_AGED.key())
                && v.number(row + "share_left") < 0.05) {
              checks.refuse(row + "share_left", List.of(), "at least 5 % of a battery", "");
            }
          });
      checks.run(() -> insideTheRun(v, row + "at", checks));
      checks.run(
          () -> {
            if (v.text(row + "what").equals("shore_power") && v.number("shore.power") <= 0) {
              checks.refuse(
                  row + "what",
                  List.of("shore.power"),
                  "another event where there is no charger (shore.power)",
                  "Give the output of the mains charger as shore.power.");
            }
          });
    }
  }

  /**
   * An event given as a calendar time may lie outside when another window is asked for by option;
   * in the window of the file it is a mistake.
   */
  private static void insideTheRun(Values v, String at, Checks checks) {
    boolean moved = v.isFromOption("run.from") || v.isFromOption("run.days");
    Window window = SiteKeys.window(v);
    double atS = v.secondsSince(at, window.fromEpochS());
    double endS = window.toEpochS() - window.fromEpochS();
    if (!moved && (atS < 0 || atS >= endS)) {
      checks.refuse(
          at,
          List.of(),
          "within the run: run.from = "
              + v.shown("run.from")
              + " ("
              + v.whence("run.from")
              + "), "
              + window.days()
              + " days",
          "");
    }
  }
}
