package org.broodbench.loop;

import org.broodbench.controller.Commands;
import org.broodbench.plant.Plant;

/** Looks at every step of a run before the plant moves on from it. */
public interface Onlooker {
  /** Nobody looks. */
  Onlooker NOBODY = (endS, lengthS, plant, commands) -> {};

  /**
   * Looks at a step; what the plant says at the end of it is at theta 1.
   *
   * @param endS end of the step, s since the start
   * @param lengthS its length, s
   * @param plant the plant with the solved step
   * @param commands what the controller asks and shows
   */
  void step(double endS, double lengthS, Plant plant, Commands commands);
}
