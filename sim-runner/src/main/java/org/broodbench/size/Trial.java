package org.broodbench.size;

import java.util.List;

/**
 * What became of a candidate.
 *
 * @param choices what was built in, a text a part
 * @param settings all settings of it
 * @param price price
 * @param massKg mass, kg
 * @param met whether it reaches what is asked
 * @param tried seasons that were simulated; fewer than all where the answer was sure before
 * @param lossOfLoadH mean hours a season with the heat shed for want of charge, over the seasons
 *     that were tried
 * @param seasonsMet seasons that met every requirement
 * @param lack whether it fails for want of warmth or charge, so that anything weaker fails too
 * @param dailyWh mean energy that its loads took a day
 * @param pvW rated power of all modules, W
 * @param batteryWh nominal energy of the battery, Wh
 */
public record Trial(
    List<String> choices,
    List<String> settings,
    double price,
    double massKg,
    boolean met,
    int tried,
    double lossOfLoadH,
    int seasonsMet,
    boolean lack,
    double dailyWh,
    double pvW,
    double batteryWh) {
  /** As one line, for a journal. */
  String line() {
    return met
        + ";"
        + tried
        + ";"
        + lossOfLoadH
        + ";"
        + seasonsMet
        + ";"
        + lack
        + ";"
        + dailyWh
        + ";"
        + pvW
        + ";"
        + batteryWh;
  }

  /** Read back. */
  static Trial of(Candidate c, String line) {
    String[] f = line.split(";");
    return of(
        c,
        Boolean.parseBoolean(f[0]),
        Integer.parseInt(f[1]),
        Double.parseDouble(f[2]),
        Integer.parseInt(f[3]),
        Boolean.parseBoolean(f[4]),
        Double.parseDouble(f[5]),
        Double.parseDouble(f[6]),
        Double.parseDouble(f[7]));
  }

  static Trial of(
      Candidate c,
      boolean met,
      int tried,
      double lossOfLoadH,
      int seasonsMet,
      boolean lack,
      double dailyWh,
      double pvW,
      double batteryWh) {
    List<String> choices = new java.util.ArrayList<>();
    for (int p = 0; p < c.at().length; p++) {
      choices.add(c.choice(p).label());
    }
    return new Trial(
        choices,
        c.settings(),
        c.price(),
        c.massKg(),
        met,
        tried,
        lossOfLoadH,
        seasonsMet,
        lack,
        dailyWh,
        pvW,
        batteryWh);
  }
}
