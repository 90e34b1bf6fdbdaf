package org.broodbench.size;

import org.broodbench.sky.Forcing;

/**
 * One season that a rig must come through.
 *
 * @param name what it is, in a word or two
 * @param hardnessKWh heat need minus sun of a small rig; harder seasons are tried first
 * @param forcing what a plant feels
 */
public record SizeSeason(String name, double hardnessKWh, Forcing forcing) {}
