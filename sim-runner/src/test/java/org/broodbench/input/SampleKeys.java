package org.broodbench.input;

import org.broodbench.matter.Dimension;

/** A small registry that has one of everything, so that the engine is tested without real keys. */
final class SampleKeys {
  private SampleKeys() {}

  static Keys keys() {
    Keys.Builder keys = Keys.builder();
    keys.plain("title", Kind.TEXT).byDefault("untitled").help("Name of the case.");
    keys.table("probe", "The probe.");
    keys.choice("probe.place", "comb", "edge").byDefault("comb").help("Where it hangs.");
    keys.table("heat", "The thermostat.");
    keys.quantity("heat.set_point", "degC", Dimension.TEMPERATURE)
        .between("10 degC", "38 degC")
        .byDefault(
            "33 degC at comb, 22 degC at edge",
            v -> v.text("probe.place").equals("edge") ? "22 degC" : "33 degC")
        .help("Heat stops here.");
    keys.quantity("heat.differential", "K", Dimension.TEMPERATURE_DIFFERENCE)
        .between("0.2 K", "5 K")
        .byDefault("1 K")
        .help("Heat starts this far below.");
    keys.quantity("heat.min_on", "min", Dimension.TIME)
        .between("0 min", "60 min")
        .byDefault("3 min")
        .help("Shortest run.");
    keys.table("battery", "The battery.");
    keys.quantity("battery.capacity", "Ah", Dimension.CHARGE, Dimension.ENERGY)
        .above("0 Ah")
        .help("What it holds when new.");
    keys.quantity("battery.share", "%", Dimension.RATIO)
        .between("10 %", "100 %")
        .byDefault("90 %")
        .help("Charge at the start.");
    keys.plain("battery.cells", Kind.INTEGER).between("1", "24").byDefault("6").help("Cells.");
    keys.plain("battery.factor", Kind.NUMBER).atLeast("0.5").byDefault("1.5").help("A factor.");
    keys.plain("battery.old", Kind.BOOLEAN).byDefault("false").help("Whether it is old.");
    keys.plain("start", Kind.DATE).optional("the first day").help("First day.");
    keys.rows("box", 1, 3, "Boxes from below.");
    keys.quantity("box.*.height", "mm", Dimension.LENGTH)
        .between("100 mm", "400 mm")
        .byDefault("230 mm")
        .help("Inside height.");
    keys.rows("event", 0, 5, "What happens.");
    keys.plain("event.*.at", Kind.MOMENT).help("When.");
    keys.choice("event.*.what", "feed", "open").help("What.");
    keys.quantity("event.*.mass", "kg", Dimension.MASS)
        .atMost("20 kg")
        .onlyWhen("what", "feed")
        .help("Mass.");
    keys.quantity("event.*.duration", "min", Dimension.TIME)
        .byDefault("10 min")
        .onlyWhen("what", "open")
        .help("How long.");
    return keys.build();
  }
}
