package org.broodbench.input;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/** The keys of one scenario with their present values, for whoever lets people turn them. */
public final class KeyOffers {
  private KeyOffers() {}

  /**
   * One key that can be turned.
   *
   * @param path dotted, with row numbers
   * @param key what is declared about it
   * @param value as written, or its default; empty where there is none
   * @param number the value in the shown unit; not a number where it has none
   * @param assumed whether the value is a default
   */
  public record Offer(String path, Key key, String value, double number, boolean assumed) {
    /** Lowest allowed value in the shown unit; not a number where there is no bound. */
    public double low() {
      return inShown(key.low());
    }

    /** Highest allowed value in the shown unit. */
    public double high() {
      return inShown(key.high());
    }

    private double inShown(Bound bound) {
      return bound == null
          ? Double.NaN
          : key.shown() == null ? bound.base() : key.shown().fromBase(bound.base());
    }
  }

  /**
   * Every key with a value of its own kind but texts, in the order of the registry. Keys that do
   * not apply are left out; so are events, which are no settings.
   *
   * @param text bytes of the scenario, which reads without problems together with the settings
   */
  public static List<Offer> of(String name, byte[] text, List<String> settings) {
    Keys keys = ScenarioKeys.all();
    Values v =
        ScenarioText.read(keys, name, new String(text, StandardCharsets.UTF_8), settings).values();
    List<Offer> offers = new ArrayList<>();
    for (String path : v.paths()) {
      Key key = keys.find(path).orElseThrow();
      if (key.kind() == Kind.TEXT || path.startsWith("event.")) {
        continue;
      }
      try {
        if (v.applies(key, path)) {
          offers.add(offer(v, path, key));
        }
      } catch (Values.Unsound e) {
        offers.add(new Offer(path, key, "", Double.NaN, false));
      }
    }
    return offers;
  }

  /** How many rows a repeated table has. */
  public static int rows(String name, byte[] text, List<String> settings, String table) {
    String decoded = new String(text, StandardCharsets.UTF_8);
    return ScenarioText.read(ScenarioKeys.all(), name, decoded, settings).values().rowCount(table);
  }

  private static Offer offer(Values v, String path, Key key) {
    if (!v.has(path)) {
      return new Offer(path, key, "", Double.NaN, true);
    }
    double number = Double.NaN;
    if (key.kind() == Kind.QUANTITY) {
      Quantity q = v.quantity(path);
      if (q.dimension() == key.shown().dimension()) {
        number = key.shown().fromBase(q.base());
      }
    } else if (key.kind() == Kind.INTEGER || key.kind() == Kind.NUMBER) {
      number = v.number(path);
    }
    return new Offer(path, key, v.shown(path), number, v.isAssumed(path));
  }
}
