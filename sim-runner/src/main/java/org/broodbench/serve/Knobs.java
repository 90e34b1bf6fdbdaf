package org.broodbench.serve;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.broodbench.input.KeyOffers;
import org.broodbench.matter.Unit;
import org.broodbench.matter.Units;
import org.broodbench.output.LivePicture;

/**
 * What can be turned on the page: first the few things that a keeper changes most, with the stretch
 * that a slider covers, then every other key by its name. Stretches and steps are own choices in
 * the unit that the key is shown in; the field beside a slider takes all that the key allows.
 */
final class Knobs {
  private record Knob(String path, String name, double low, double high, double step) {}

  private record Group(String name, List<Knob> knobs) {}

  private static final List<Group> GROUPS =
      List.of(
          new Group(
              "Set points",
              List.of(
                  new Knob("controller.heat.set_point", "Brood set point", 24, 36, 0.25),
                  new Knob("controller.heat.differential", "Differential", 0.2, 4, 0.1),
                  new Knob("controller.heat.set_back", "Set-back on low battery", 0, 10, 0.5),
                  new Knob("controller.fan.on_above", "Fan on above", 30, 42, 0.25))),
          new Group(
              "Timings",
              List.of(
                  new Knob("controller.heat.min_on", "Minimum on", 0, 20, 0.5),
                  new Knob("controller.heat.min_off", "Minimum off", 0, 30, 0.5),
                  new Knob("controller.heat.starts_per_hour", "Most starts an hour", 1, 12, 1))),
          new Group(
              "Heater and hive",
              List.of(
                  new Knob("heater.power", "Heater", 0, 80, 1),
                  new Knob("heater.pan_mass", "Filling of the pan", 0, 15, 0.5),
                  new Knob("hive.insulation", "Insulation all round", 0, 100, 5),
                  new Knob("hive.top_vent", "Upper vent", 0, 30, 0.5),
                  new Knob("hive.entrance_width", "Entrance width", 10, 300, 5))),
          new Group(
              "Panel, battery, mains",
              List.of(
                  new Knob("pv.power", "Panel", 0, 400, 10),
                  new Knob("battery.capacity", "Battery", 10, 300, 5),
                  new Knob("battery.initial_charge", "Charge at the start", 5, 100, 5),
                  new Knob("shore.power", "Mains charger", 0, 300, 10))),
          new Group(
              "Colony and weather",
              List.of(
                  new Knob("colony.bees", "Bees", 0, 20_000, 250),
                  new Knob("colony.brood_cells", "Brood cells", 0, 12_000, 250),
                  new Knob("weather.colder_by", "Colder by", 0, 15, 0.5),
                  new Knob("weather.cloudier_by", "Sunlight taken away", 0, 80, 5))));

  private Knobs() {}

  /** Groups of paths with their sliders, as JSON; keys that the rig does not have are left out. */
  static String groups(List<KeyOffers.Offer> offers) {
    Set<String> there = new TreeSet<>();
    offers.forEach(o -> there.add(o.path()));
    StringBuilder out = new StringBuilder("[");
    for (Group g : GROUPS) {
      out.append(out.length() > 1 ? "," : "")
          .append("{\"name\":")
          .append(LivePicture.string(g.name()))
          .append(",\"knobs\":[");
      String comma = "";
      for (Knob k : g.knobs()) {
        if (there.contains(k.path())) {
          out.append(comma)
              .append("{\"path\":")
              .append(LivePicture.string(k.path()))
              .append(",\"name\":")
              .append(LivePicture.string(k.name()))
              .append(",\"low\":")
              .append(LivePicture.number(k.low()))
              .append(",\"high\":")
              .append(LivePicture.number(k.high()))
              .append(",\"step\":")
              .append(LivePicture.number(k.step()))
              .append('}');
          comma = ",";
        }
      }
      out.append("]}");
    }
    return out.append(']').toString();
  }

  /** Every key with what is declared about it and its value, as JSON by path. */
  static String offers(List<KeyOffers.Offer> offers) {
    StringBuilder out = new StringBuilder("{");
    for (KeyOffers.Offer o : offers) {
      out.append(out.length() > 1 ? "," : "")
          .append(LivePicture.string(o.path()))
          .append(":{\"help\":")
          .append(LivePicture.string(o.key().help()))
          .append(",\"kind\":")
          .append(LivePicture.string(o.key().kind().name()))
          .append(",\"range\":")
          .append(LivePicture.string(o.key().range()))
          .append(",\"low\":")
          .append(LivePicture.number(o.low()))
          .append(",\"high\":")
          .append(LivePicture.number(o.high()))
          .append(",\"usual\":")
          .append(LivePicture.string(o.key().defaultWords()))
          .append(",\"choices\":[");
      String comma = "";
      for (String c : o.key().choices()) {
        out.append(comma).append(LivePicture.string(c));
        comma = ",";
      }
      out.append(']');
      if (o.key().shown() != null) {
        Unit shown = o.key().shown();
        Unit us = Units.usual(shown);
        double shift = us.fromBase(shown.toBase(0));
        out.append(",\"unit\":[")
            .append(LivePicture.string(shown.spelling()))
            .append(',')
            .append(LivePicture.string(shown.symbol()))
            .append("],\"us\":[")
            .append(LivePicture.string(us.spelling()))
            .append(',')
            .append(LivePicture.string(us.symbol()))
            .append(',')
            .append(LivePicture.number(us.fromBase(shown.toBase(1)) - shift))
            .append(',')
            .append(LivePicture.number(shift))
            .append(']');
      }
      out.append(",").append(value(o)).append('}');
    }
    return out.append('}').toString();
  }

  /** The values alone, as JSON by path. */
  static String values(List<KeyOffers.Offer> offers) {
    StringBuilder out = new StringBuilder("{");
    for (KeyOffers.Offer o : offers) {
      out.append(out.length() > 1 ? "," : "")
          .append(LivePicture.string(o.path()))
          .append(":{")
          .append(value(o))
          .append('}');
    }
    return out.append('}').toString();
  }

  private static String value(KeyOffers.Offer o) {
    return "\"value\":"
        + LivePicture.string(o.value())
        + ",\"number\":"
        + LivePicture.number(o.number())
        + ",\"assumed\":"
        + o.assumed();
  }
}
