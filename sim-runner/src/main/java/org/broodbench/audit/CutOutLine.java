package org.broodbench.audit;

import org.broodbench.rig.Known;

/**
 * Something in the chain that may open by itself.
 *
 * @param name what it is
 * @param trips when it opens, in words with its number
 * @param reconnects when it closes again
 * @param returns whether it returns by itself
 */
public record CutOutLine(String name, String trips, String reconnects, Known returns) {}
