package org.broodbench.study;

import java.util.List;

/** The cautions that every result carries. */
public final class Cautions {
  private Cautions() {}

  /** The cautions, in the order of what can hurt most. */
  public static List<String> all() {
    return List.of(
        "This is a planning aid, not an approval: mains, batteries, hot surfaces and bees can hurt people. Local"
            + " electrical codes and a licensed electrician decide.",
        "Put an independent thermal cut-out that does not reset itself in series with every heater: relays can weld"
            + " closed, and solid-state switches usually fail closed.",
        "Lead-acid batteries give off hydrogen when they charge: ventilate, keep sparks away, never inside the hive."
            + " Lithium batteries need their protection board and must not be charged in frost. Fuse at the battery.",
        "In a published trial heated weak colonies had significantly more mites: monitor and treat.",
        "Local bee-health rules apply to moving and feeding colonies.");
  }
}
