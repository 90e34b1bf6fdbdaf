package org.broodbench.size;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;

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
 * @param usedShare share of the battery that may be used, 0 to 1
 * @param missed numbers of the seasons that missed a requirement, from 0
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
    double batteryWh,
    double usedShare,
    List<Integer> missed) {
  /** Copies the lists. */
  public Trial {
    choices = List.copyOf(choices);
    settings = List.copyOf(settings);
    missed = List.copyOf(missed);
  }

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
        + batteryWh
        + ";"
        + usedShare
        + ";"
        + missed.stream().map(String::valueOf).collect(Collectors.joining(" "));
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
        Double.parseDouble(f[7]),
        Double.parseDouble(f[8]),
        f.length < 10 ? List.of() : Arrays.stream(f[9].split(" ")).map(Integer::valueOf).toList());
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
      double batteryWh,
      double usedShare,
      List<Integer> missed) {
    List<String> choices = new ArrayList<>();
    for (int p = 0; p < c.at().length; p++) {
      choices.add(c.spec().parts().get(p).name() + " " + c.choice(p).label());
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
        batteryWh,
        usedShare,
        missed);
  }
}
