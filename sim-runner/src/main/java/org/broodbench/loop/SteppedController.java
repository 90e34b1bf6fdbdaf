package org.broodbench.loop;

import org.broodbench.controller.Commands;
import org.broodbench.controller.Readings;

/** A controller as the loop steps it: the reference core, a program, a board or a recording. */
public interface SteppedController {
  /** Begins anew as after power-up. */
  void powerUp();

  /** One step at a time of the controller's own counter. */
  void step(int nowMillis, Readings readings, Commands commands);

  /**
   * The keeper keys in another set point for the brood, °C; false where this controller cannot take
   * it.
   */
  boolean keyInSetPoint(double setPointC);
}
