package org.broodbench.hive;

/**
 * What the weather sees of a face.
 *
 * @param solarAbsorptance share of sunlight taken up, 0 to 1; of the screen, where there is one
 * @param screened whether a thin screen stands before the face with a gap that outdoor air blows
 *     through, as a rain or sun shield does
 */
public record Skin(double solarAbsorptance, boolean screened) {}
