package org.broodbench.hive;

/**
 * One box of the stack.
 *
 * @param heightM inside height, m
 * @param frames frames it holds
 * @param storesKg honey, syrup and pollen in its combs, kg
 */
public record BoxSpec(double heightM, int frames, double storesKg) {}
