package org.broodbench.tune;

/**
 * A candidate with its scores over all seasons.
 *
 * @param candidate the candidate
 * @param scores over all seasons
 */
public record Judged(Candidate candidate, Scores scores) {}
