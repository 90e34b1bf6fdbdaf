package org.broodbench.study;

import java.util.List;

/**
 * What came of the search for single changes.
 *
 * @param tried how many changes were simulated; 0 where nothing was missed, or none was asked for
 * @param lossFactor heat loss of the cluster that they were tried with, a factor on the size law
 * @param lossName the same in a word: own, low, high
 * @param tickMillis time between two steps of the controller in these runs, ms
 * @param helpful those that help, best first
 */
public record RemedySearch(
    int tried, double lossFactor, String lossName, int tickMillis, List<Remedy> helpful) {
  /** No search. */
  public static final RemedySearch NONE = new RemedySearch(0, Double.NaN, "", 0, List.of());

  /** Copies the list. */
  public RemedySearch {
    helpful = List.copyOf(helpful);
  }
}
