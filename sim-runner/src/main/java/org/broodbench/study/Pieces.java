package org.broodbench.study;

/**
 * Carries out single pieces of a study by name. What a piece gives is one line, follows from study
 * and name alone, and says all that the study needs of it: so it does not matter who carries it
 * out, where, and how often.
 */
public interface Pieces {
  /**
   * What a piece gives; called from several threads.
   *
   * @param name without tab or line end
   * @return without line end
   * @throws IllegalArgumentException where the study has no piece of that name
   */
  String of(String name);
}
