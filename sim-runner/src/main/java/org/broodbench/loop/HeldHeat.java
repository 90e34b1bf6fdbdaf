package org.broodbench.loop;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.broodbench.controller.Reason;

/**
 * For how long heat was wanted and one reason of the controller's held it off.
 *
 * @param reason one of {@link Reason}'s
 * @param times how often
 * @param allS in all, s
 * @param longestS longest at a stretch, s
 * @param firstAtS when first, s since the start
 */
public record HeldHeat(int reason, int times, double allS, double longestS, double firstAtS) {
  /** What {@link EventRow#what} says of heat that is wanted and held off. */
  public static final String WHAT = "heat held off";

  /** All of a run, the longest first. */
  public static List<HeldHeat> of(RunResult r) {
    Map<String, HeldHeat> byName = new LinkedHashMap<>();
    String held = Reason.name(Reason.NONE);
    double sinceS = 0;
    for (EventRow e : r.events()) {
      if (e.what().equals(WHAT)) {
        add(byName, held, sinceS, e.atS());
        held = e.to();
        sinceS = e.atS();
      }
    }
    add(byName, held, sinceS, r.days() * 86_400);
    List<HeldHeat> all = new ArrayList<>(byName.values());
    all.sort((a, b) -> Double.compare(b.allS, a.allS));
    return all;
  }

  private static void add(Map<String, HeldHeat> byName, String held, double fromS, double toS) {
    int code = code(held);
    if (code == Reason.NONE) {
      return;
    }
    byName.merge(
        held,
        new HeldHeat(code, 1, toS - fromS, toS - fromS, fromS),
        (a, b) ->
            new HeldHeat(
                code, a.times + 1, a.allS + b.allS, Math.max(a.longestS, b.longestS), a.firstAtS));
  }

  private static int code(String name) {
    for (int code = 0; code <= Reason.LAST; code++) {
      if (Reason.name(code).equals(name)) {
        return code;
      }
    }
    throw new IllegalArgumentException(name);
  }

  /** In words: {@code minimum off 12 times, 34 min in all, 4 min 20 s at most}. */
  public String words() {
    return ReasonWords.label(reason)
        + " "
        + (times == 1
            ? "once, " + Lengths.of(allS)
            : times
                + " times, "
                + Lengths.of(allS)
                + " in all, "
                + Lengths.of(longestS)
                + " at most");
  }
}
