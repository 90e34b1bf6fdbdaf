package org.broodbench.study;

import java.util.List;
import org.broodbench.rig.Requirement;

/**
 * A single change that helps, as simulated.
 *
 * @param change what is changed
 * @param effects every requirement before and after
 * @param left how much of all that was missed is left: the sum over the requirements of what is
 *     still missed as a share of what was missed; as many as were missed before means no effect
 * @param reach for which colonies every requirement is met
 */
public record Remedy(Change change, List<Effect> effects, double left, Reach reach) {
  /** Copies the list. */
  public Remedy {
    effects = List.copyOf(effects);
  }

  /** For which colonies every requirement is met. */
  public enum Reach {
    /** For those of low, own and high heat loss. */
    EVERY_COLONY,
    /** For the one that the change was tried with, and not for some other. */
    TRIED_COLONY,
    /** For the one that it was tried with; the others were not looked at. */
    TRIED_COLONY_ONLY_LOOKED_AT,
    /** Not even for that one. */
    NONE
  }

  /**
   * A requirement before and after.
   *
   * @param requirement what is required
   * @param before measured without the change, in the requirement's unit
   * @param after measured with it
   * @param metBefore whether it was met without the change
   * @param metAfter whether it is met with it
   */
  public record Effect(
      Requirement requirement, double before, double after, boolean metBefore, boolean metAfter) {}
}
