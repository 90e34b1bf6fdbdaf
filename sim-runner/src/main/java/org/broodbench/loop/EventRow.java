package org.broodbench.loop;

/**
 * One row of the event list.
 *
 * @param atS seconds since the start of the run
 * @param what what changed
 * @param from its state before
 * @param to its state after
 * @param reason why, in words
 */
public record EventRow(double atS, String what, String from, String to, String reason) {}
