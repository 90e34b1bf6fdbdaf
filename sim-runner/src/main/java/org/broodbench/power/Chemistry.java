package org.broodbench.power;

/** Kind of battery. */
public enum Chemistry {
  /** Lead-acid with liquid electrolyte. */
  FLOODED,
  /** Lead-acid, absorbed glass mat. */
  AGM,
  /** Lead-acid, gelled electrolyte. */
  GEL,
  /** Lithium iron phosphate. */
  LFP;

  /** Whether it is one of the lead-acid kinds. */
  public boolean leadAcid() {
    return this != LFP;
  }
}
