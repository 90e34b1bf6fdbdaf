package org.broodbench.study;

import org.broodbench.rig.Requirement;

/**
 * A requirement with what the runs say about it.
 *
 * @param requirement what is required
 * @param met met whatever the published heat loss of small clusters
 * @param dependsOnColony met at some of the published values only
 * @param value measured at the scenario's own value, in the requirement's unit; not a number where
 *     nothing of the kind happened
 * @param worstAtS when it was worst, s since the start; −1 where no moment applies
 * @param why in words
 */
public record JudgedRequirement(
    Requirement requirement,
    boolean met,
    boolean dependsOnColony,
    double value,
    double worstAtS,
    String why) {}
