package org.broodbench.tune;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/**
 * Chooses one of the best trade-offs: the one nearest to the best of every aim at once, each
 * measured by its range over the front, what hurts brood counting three times (compromise
 * programming, M. Zeleny, in "Multiple Criteria Decision Making" (1973); the weights are own
 * choices). Candidates that hurt brood more than the present settings do are not chosen.
 */
final class Choice {
  private static final double BROOD_WEIGHT = 3;

  private Choice() {}

  /** Those that spare brood as well as the present settings do, best first. */
  static List<Judged> sorted(List<Judged> front, Scores now) {
    List<Scores> scores = front.stream().map(Judged::scores).toList();
    return front.stream()
        .filter(j -> spares(j.scores(), now))
        .sorted(Comparator.comparingDouble(j -> distance(j.scores(), scores)))
        .toList();
  }

  /** Whether some scores are no worse for brood than others, by more than a grain. */
  static boolean spares(Scores a, Scores b) {
    return Arrays.stream(Aim.values())
        .filter(Aim::ofBrood)
        .allMatch(aim -> a.get(aim) - b.get(aim) <= aim.grain());
  }

  /** How far some scores are from the best of a front in every aim at once; less is better. */
  static double distance(Scores s, List<Scores> front) {
    double sum = 0;
    for (Aim aim : Aim.values()) {
      double low = front.stream().mapToDouble(j -> j.get(aim)).min().orElseThrow();
      double high = front.stream().mapToDouble(j -> j.get(aim)).max().orElseThrow();
      double span = Math.max(high - low, aim.grain());
      double off = (s.get(aim) - low) / span * (aim.ofBrood() ? BROOD_WEIGHT : 1);
      sum += off * off;
    }
    return sum;
  }

  /** Why, against the present settings. */
  static String why(Scores chosen, Scores now) {
    List<String> better = new ArrayList<>();
    List<String> worse = new ArrayList<>();
    for (Aim aim : Aim.values()) {
      double change = chosen.get(aim) - now.get(aim);
      if (Math.abs(change) >= aim.grain()) {
        String words =
            String.format(
                Locale.ROOT,
                "%s %s instead of %s",
                aim.words(),
                amount(aim, chosen.get(aim)),
                amount(aim, now.get(aim)));
        (change < 0 ? better : worse).add(words);
      }
    }
    if (better.isEmpty() && worse.isEmpty()) {
      return "as good as the present settings in every aim: nothing found that is worth a change";
    }
    String gains = better.isEmpty() ? "it gains nothing" : "it gains " + String.join(", ", better);
    return gains
        + (worse.isEmpty() ? "; it costs nothing" : "; it costs " + String.join(", ", worse));
  }

  private static String amount(Aim aim, double value) {
    String unit = aim == Aim.ENERGY ? "Wh" : aim == Aim.BATTERY_WEAR ? "%" : aim.unit();
    String number = String.format(Locale.ROOT, value < 10 ? "%.2f" : "%.0f", value);
    return aim == Aim.STARTS ? number : number + " " + unit;
  }
}
