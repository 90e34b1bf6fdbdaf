package org.broodbench.input;

import java.util.Collection;
import java.util.Locale;
import java.util.Optional;

/** Finds the known name that a mistyped one was probably meant to be. */
public final class DidYouMean {
  /** No name is half as long; the effort grows with the length. */
  private static final int LONGEST = 100;

  private DidYouMean() {}

  /**
   * The closest of some names, if it is close enough to be worth saying: at most a third of the
   * letters differ, and at most three. Own choice; ties go to the first.
   */
  public static Optional<String> closest(String typed, Collection<String> names) {
    if (typed.length() > LONGEST) {
      return Optional.empty();
    }
    String best = null;
    int bestDistance = Integer.MAX_VALUE;
    for (String name : names) {
      int distance = distance(plain(typed), plain(name));
      int longer = Math.max(typed.length(), name.length());
      if (distance <= Math.min(3, Math.max(1, longer / 3)) && distance < bestDistance) {
        best = name;
        bestDistance = distance;
      }
    }
    return Optional.ofNullable(best);
  }

  private static String plain(String name) {
    return name.toLowerCase(Locale.ROOT).replace('-', '_');
  }

  /**
   * Edit distance with insertion, deletion, replacement and the exchange of two neighbours, each
   * counting one (optimal string alignment; Damerau 1964, Levenshtein 1966).
   */
  static int distance(String a, String b) {
    int[][] d = new int[a.length() + 1][b.length() + 1];
    for (int i = 0; i <= a.length(); i++) {
      for (int j = 0; j <= b.length(); j++) {
        if (i == 0 || j == 0) {
          d[i][j] = i + j;
          continue;
        }
        int change = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
        d[i][j] = Math.min(Math.min(d[i - 1][j] + 1, d[i][j - 1] + 1), d[i - 1][j - 1] + change);
        if (i > 1
            && j > 1
            && a.charAt(i - 1) == b.charAt(j - 2)
            && a.charAt(i - 2) == b.charAt(j - 1)) {
          d[i][j] = Math.min(d[i][j], d[i - 2][j - 2] + 1);
        }
      }
    }
    return d[a.length()][b.length()];
  }
}
