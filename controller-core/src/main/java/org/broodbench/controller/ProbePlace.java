package org.broodbench.controller;

/** Where a brood probe sits. The same reading means different things at different places. */
public enum ProbePlace {
  /** Between brood combs; bees hold 33 to 36 degrees Celsius here. */
  BROOD_COMB,
  /** At the edge of the nest; 18 to 25 degrees Celsius are usual while the nest is warm. */
  NEST_EDGE,
  /** In the air of the brood box, outside the nest. */
  BOX_AIR
}
