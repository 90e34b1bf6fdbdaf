package org.broodbench.hive;

/**
 * One box of the stack: with combs, with feed and no combs, or empty.
 *
 * @param heightM inside height, m
 * @param frames frames it holds; 0 for a feeder or an empty box
 * @param storesKg honey, syrup and pollen in its combs or feed in its container, kg
 * @param dummyBoards boards of 10 mm that close off the room along its long sides, 0 to 2
 * @param below what lies between it and the box below; of the lowest box, nothing
 */
public record BoxSpec(
    double heightM, int frames, double storesKg, int dummyBoards, Separator below) {
  /** A box of frames on the bare tops of the frames below. */
  public BoxSpec(double heightM, int frames, double storesKg) {
    this(heightM, frames, storesKg, 0, Separator.NONE);
  }
}
