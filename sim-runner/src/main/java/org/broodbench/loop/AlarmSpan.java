package org.broodbench.loop;

/**
 * One alarm over a run.
 *
 * @param name its name
 * @param firstAtS when it was first raised, s since the start
 * @param hours how long it stood in all, h
 */
public record AlarmSpan(String name, double firstAtS, double hours) {}
