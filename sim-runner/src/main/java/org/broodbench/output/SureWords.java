package org.broodbench.output;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.broodbench.study.Sure;

/** What an ensemble showed, in sentences. */
final class SureWords {
  /** A number that explains less of the variance is not worth a sentence; own choice. */
  private static final double NOTICED = 0.05;

  /** The published methods behind the figures. */
  static final String METHOD =
      "numbers drawn by a Latin hypercube (McKay and others 1979); intervals of shares after Wilson"
          + " (1927); shares of the spread are first-order indices of the variance, estimated from"
          + " the same runs in bins of each number (Plischke and others 2013).";

  private SureWords() {}

  static List<String> lines(Sure sure) {
    List<String> lines = new ArrayList<>();
    lines.add(
        String.format(
            Locale.ROOT,
            "How sure     %d runs over %d weathers and %d uncertain numbers: everything met in %s.",
            sure.members(),
            sure.seasons(),
            sure.ranges().size(),
            chance(sure.everything())));
    for (Sure.OfRequirement q : sure.requirements()) {
      lines.add(
          String.format(
              Locale.ROOT,
              "             %s met in %s; %s",
              q.requirement().kind().key(),
              chance(q.met()),
              matters(q)));
    }
    lines.add("             Method: " + METHOD);
    return lines;
  }

  static String chance(Sure.Chance c) {
    return String.format(
        Locale.ROOT, "%.0f %% (%.0f to %.0f %%)", 100 * c.share(), 100 * c.low(), 100 * c.high());
  }

  static String matters(Sure.OfRequirement q) {
    Sure.Weight w = q.weights().get(0);
    return w.share() < NOTICED
        ? "no single number decides"
        : String.format(
            Locale.ROOT,
            "most depends on %s (%.0f %% of the spread), settled by %s",
            w.what(),
            100 * w.share(),
            w.settledBy());
  }
}
