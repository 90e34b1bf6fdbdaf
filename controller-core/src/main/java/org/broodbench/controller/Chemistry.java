package org.broodbench.controller;

/** What the battery is made of. */
public enum Chemistry {
  /** Vented lead-acid. */
  FLOODED,
  /** Lead-acid with absorbed acid. */
  AGM,
  /** Lithium iron phosphate: its volts say little about its charge. */
  LITHIUM_IRON_PHOSPHATE
}
